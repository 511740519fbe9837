// What goes wrong around a running console, provoked for real: what the person sees, and what is kept.

import { spawnSync } from "node:child_process";
import { readdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "rolldown";
import { afterEach, beforeEach, describe, expect, onTestFinished, test } from "vitest";
import { lockOf } from "../../src/store/lock.ts";
import { thisHolder } from "../../src/store/lock-holder.ts";
import { enter, newCase, PATIENCE, saved, says } from "../terminal/driving.ts";
import { type ConsoleOptions, startConsole, stopConsoles } from "../terminal/harness.ts";
import { testDir } from "../terminal/test-folder.ts";
import { kindsAt, leave, runningIn } from "./running.ts";

let dir: string;
beforeEach(async () => {
  dir = await testDir();
});
afterEach(stopConsoles);

const running = (options: Partial<ConsoleOptions> = {}) => runningIn(dir, options);

const mayMount = process.platform === "linux" && process.getuid?.() === 0;

describe("a disk", () => {
  test.skipIf(!mayMount)(
    "that is full (needs leave to mount one): says NOT SAVED, warns at leaving, and saves once there is room",
    async () => {
      const mounted = spawnSync("mount", ["-t", "tmpfs", "-o", "size=256k,mode=0700", "tmpfs", dir]);
      if (mounted.status !== 0) return expect.unreachable("the disk could not be mounted");
      onTestFinished(() => void spawnSync("umount", ["-l", dir]));
      const { console, path } = await running();
      await writeFile(join(dir, "filler"), Buffer.alloc(2 ** 20)).catch(() => undefined);
      await console.type(`b${enter}a512${enter}`);
      await console.waitFor(says("NOT SAVED"), PATIENCE);
      await console.waitFor("the disk is full; trying again", PATIENCE);
      await console.type("q");
      await console.waitFor((screen) => screen.join(" ").includes("!"), PATIENCE);
      console.raw("\x1b");
      await rm(join(dir, "filler"));
      await console.waitFor(saved(3), PATIENCE);
      expect(await kindsAt(path)).toEqual(["opened", "span", "act"]);
    },
  );

  test.skipIf(!mayMount)(
    "that hangs (needs leave to freeze one): keys go on, the state says so, and all is saved when it answers",
    async ({ skip }) => {
      const image = join(dir, "..", `${Date.now()}.image`);
      onTestFinished(() => rm(image, { force: true }));
      spawnSync("dd", ["if=/dev/zero", `of=${image}`, "bs=1M", "count=16"]);
      const made = spawnSync("mkfs.ext4", ["-q", image]).status;
      if (made !== 0 || spawnSync("mount", ["-o", "loop", image, dir]).status !== 0)
        skip("no loop device can be mounted here");
      onTestFinished(() => {
        spawnSync("fsfreeze", ["-u", dir]);
        spawnSync("umount", ["-l", dir]);
      });
      const { console, path } = await running();
      if (spawnSync("fsfreeze", ["-f", dir]).status !== 0) skip("no disk can be frozen here");
      await console.type(`b${enter}`);
      await console.waitFor("the disk does not answer", PATIENCE);
      await console.type(`a512${enter}`);
      await console.waitFor(says("NOT SAVED 2"), PATIENCE);
      spawnSync("fsfreeze", ["-u", dir]);
      await console.waitFor(saved(3), PATIENCE);
      expect(await kindsAt(path)).toEqual(["opened", "span", "act"]);
    },
  );
});

test("a folder that is taken away: says so, and saves when it is back", async () => {
  const { console, path } = await running();
  await rename(dir, `${dir}-away`);
  await console.type(`b${enter}`);
  await console.waitFor("the folder is gone", PATIENCE);
  await rename(`${dir}-away`, dir);
  await console.waitFor(saved(2), PATIENCE);
  expect(await kindsAt(path)).toEqual(["opened", "span"]);
});

describe("a case file", () => {
  test("that another program replaces is kept under a name that says so, and the record goes on", async () => {
    const { console, path } = await running();
    await writeFile(`${path}.new`, "something else");
    await rename(`${path}.new`, path);
    await console.type(`b${enter}`);
    await console.waitFor("Another program has changed the file", PATIENCE);
    await console.waitFor(saved(2), PATIENCE);
    expect(await readFile(`${path}.replaced-1`, "utf8")).toBe("something else");
    await console.type(`a512${enter}`);
    await console.waitFor(saved(3), PATIENCE);
    expect(await kindsAt(path)).toEqual(["opened", "span", "act"]);
    expect((await readdir(dir)).filter((name) => name.includes("replaced"))).toHaveLength(1);
  });

  test("that another program removes is written again", async () => {
    const { console, path } = await running();
    await rm(path);
    await console.type(`b${enter}`);
    await console.waitFor("Another program has removed the file", PATIENCE);
    await console.waitFor(saved(2), PATIENCE);
    expect(await kindsAt(path)).toEqual(["opened", "span"]);
  });

  test("that was cut short is opened from what is whole, and the person is told up to where", async () => {
    const { console, path } = await running();
    await console.type(`b${enter}`);
    await console.waitFor(saved(2), PATIENCE);
    await console.type(`a512${enter}`);
    await console.waitFor(saved(3), PATIENCE);
    await leave(console);
    const whole = await readFile(path);
    await writeFile(path, whole.subarray(0, whole.length - 150));
    const again = startConsole({ dir, args: ["run", path] });
    await again.waitFor("recovered up to entry 2", PATIENCE);
    await again.waitFor(saved(3), PATIENCE);
    expect(await kindsAt(path)).toEqual(["opened", "span", "note"]);
    expect(await readFile(`${path}.damaged-1`)).toEqual(whole.subarray(0, whole.length - 150));
  });
});

describe("a lock of a console that was killed", () => {
  test("is asked about where the case is named", async () => {
    const { console, path } = await running();
    console.kill("SIGKILL");
    await console.exited;
    const again = startConsole({ dir, args: ["run", path] });
    await again.waitFor("Take it over?", PATIENCE);
    await again.type(`y${enter}`);
    await again.waitFor(saved(1), PATIENCE);
  });

  test("is asked about on the start screen, and left where the person says nothing", async () => {
    const path = await newCase(dir, "fault");
    const dead = JSON.stringify({ ...thisHolder(), pid: 2 ** 22 + 1 });
    await writeFile(lockOf(path), dead);
    const console = startConsole({ dir });
    await console.waitFor("fault", PATIENCE);
    console.raw(enter);
    await console.waitFor("Enter takes it over", PATIENCE);
    console.raw("v");
    await console.waitFor((screen) => !screen.join(" ").includes("takes it over"), PATIENCE);
    expect(await readFile(lockOf(path), "utf8")).toBe(dead);
    console.raw(enter);
    await console.waitFor("Enter takes it over", PATIENCE);
    console.raw(enter);
    await console.waitFor(saved(1), PATIENCE);
  });
});

test("a console that is stopped and goes on writes no step of the clock, and loses nothing", async () => {
  const { console, path } = await running();
  await console.type(`b${enter}`);
  await console.waitFor(saved(2), PATIENCE);
  process.kill(console.pid, "SIGSTOP");
  console.raw(`a512${enter}`);
  await new Promise((resolve) => setTimeout(resolve, 3000));
  process.kill(console.pid, "SIGCONT");
  await console.waitFor(saved(3), PATIENCE);
  expect(await kindsAt(path)).toEqual(["opened", "span", "act"]);
});

test("memory that is nearly used up is told, and what is typed then is saved", async () => {
  const ballast = join(dir, "ballast.mjs");
  await writeFile(
    ballast,
    "import v8 from 'node:v8';const kept = []; globalThis.kept = kept; const s = () => v8.getHeapStatistics(); while (s().used_heap_size < s().heap_size_limit * 0.85 - 7e6) kept.push(new Array(1000).fill(kept.length + 0.5));",
  );
  const { console, path } = await running({
    env: { NODE_OPTIONS: `--max-old-space-size=300 --max-semi-space-size=1 --import=file://${ballast}` },
  });
  await console.waitFor("memory is nearly used up", PATIENCE);
  await console.type(`b${enter}`);
  await console.waitFor(saved(2), PATIENCE);
  expect(await kindsAt(path)).toEqual(["opened", "span"]);
});

/** As the program's own bundle: Ink reaches for this package where DEV is set. */
const WITHOUT_DEVTOOLS = {
  name: "without-devtools",
  resolveId: (id: string) => (id === "react-devtools-core" ? "\0no-devtools" : null),
  load: (id: string) => (id === "\0no-devtools" ? "export default {};" : null),
};

test("a screen that fails gives way to plain lines that still log, on a terminal put back in order", async () => {
  const program = join(dir, "failing-screen.mjs");
  await build({
    input: fileURLToPath(new URL("failing-screen.ts", import.meta.url)),
    platform: "node",
    logLevel: "warn",
    plugins: [WITHOUT_DEVTOOLS],
    transform: { define: { "process.env.NODE_ENV": '"production"', "process.env.DEV": '"false"' } },
    output: { file: program, format: "esm", codeSplitting: false },
  });
  const path = await newCase(dir, "fault");
  const console = startConsole({ dir, args: [path], program });
  await console.waitFor(saved(1), PATIENCE);
  await console.type(`b${enter}a512${enter}`);
  await console.waitFor(saved(3), PATIENCE);
  await console.type(`v250c${enter}`);
  await console.waitFor("The screen has failed (the screen is broken)", PATIENCE);
  expect(console.terminal.buffer.active.type).toBe("normal");
  await console.type(`d 300 r${enter}`);
  await console.waitFor("saved 5", PATIENCE);
  await console.type(`? nonsense${enter}`);
  await console.waitFor("pumpside keys", PATIENCE);
  await console.type(`q${enter}`);
  expect(await console.exited).toMatchObject({ exitCode: 0 });
  expect(await kindsAt(path)).toEqual(["opened", "span", "act", "volume", "dose"]);
  expect((await readdir(dir)).filter((name) => name.endsWith(".lock"))).toEqual([]);
});
