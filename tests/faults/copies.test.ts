// A folder that takes nothing: what the person left unsaved, and what the second folder is told.

import { readFile, rename, stat } from "node:fs/promises";
import { basename, join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { enter, PATIENCE, saved, says } from "../terminal/driving.ts";
import { type ConsoleOptions, type RunningConsole, startConsole, stopConsoles } from "../terminal/harness.ts";
import { testDir } from "../terminal/test-folder.ts";
import { kindsAt, leave, runningIn } from "./running.ts";

let dir: string;
beforeEach(async () => {
  dir = await testDir();
});
afterEach(stopConsoles);

const running = (options: Partial<ConsoleOptions> = {}) => runningIn(dir, options);

describe("entries that their own folder could not take before the person left", () => {
  const leaveUnsaved = async (console: RunningConsole) => {
    await console.type("q");
    await console.waitFor("! leaves", PATIENCE);
    await console.type("!");
    await console.waitFor("NOT SAVED in the case's own folder", PATIENCE);
    expect(await console.exited).toMatchObject({ exitCode: 1 });
    return console.settled();
  };

  const opened = async (path: string, options: Partial<ConsoleOptions> = {}) => {
    const console = startConsole({ dir, args: ["run", path], ...options });
    // The lock went away with the folder, and could not be let go.
    await console.waitFor("Take it over?", PATIENCE);
    await console.type(`y${enter}`);
    await console.waitFor("2 entries were taken in from a copy, up to entry 3", PATIENCE);
    await console.waitFor(saved(3), PATIENCE);
    expect(await kindsAt(path)).toEqual(["opened", "span", "act"]);
    return console;
  };

  test("are kept on this computer, told where, taken in by the next console, and forgotten there", async () => {
    const { console, path } = await running();
    await rename(dir, `${dir}-away`);
    await console.type(`b${enter}a512${enter}`);
    await console.waitFor(says("NOT SAVED 2"), PATIENCE);
    const screen = (await leaveUnsaved(console)).join("");
    const kept = join(`${dir}-home`, "pumpside", "unsaved", basename(path));
    expect(screen).toContain(kept);
    expect((await stat(kept)).mode & 0o777).toBe(0o600);
    await rename(`${dir}-away`, dir);
    expect(await kindsAt(path)).toEqual(["opened"]);
    await leave(await opened(path));
    await expect(stat(kept)).rejects.toThrow("ENOENT");
  });

  test("are taken in from the second folder where that had taken them", async () => {
    const copies = await testDir();
    const env = { PUMPSIDE_COPY_DIR: copies };
    const { console, path } = await running({ env });
    await rename(dir, `${dir}-away`);
    await console.type(`b${enter}a512${enter}`);
    await console.waitFor(says("NOT SAVED 2"), PATIENCE);
    expect((await leaveUnsaved(console)).join("")).toContain(join(copies, basename(path)));
    await rename(`${dir}-away`, dir);
    await leave(await opened(path, { env }));
  });
});

describe("a second folder", () => {
  test("gets every save, and is caught up when it comes back", async () => {
    const copies = await testDir();
    const { console, path } = await running({ env: { PUMPSIDE_COPY_DIR: copies } });
    const copy = join(copies, path.slice(dir.length + 1));
    await console.type(`b${enter}`);
    await console.waitFor(saved(2), PATIENCE);
    await rename(copies, `${copies}-away`);
    await console.type(`a512${enter}`);
    await console.waitFor(saved(3), PATIENCE);
    await console.waitFor("second copy behind by", PATIENCE);
    await rename(`${copies}-away`, copies);
    await console.waitFor((screen) => !screen.join(" ").includes("second copy"), PATIENCE);
    expect(await kindsAt(copy)).toEqual(["opened", "span", "act"]);
    expect(await readFile(copy)).toEqual(await readFile(path));
  });
});
