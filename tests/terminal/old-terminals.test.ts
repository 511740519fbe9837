// The console on old terminals, within tmux, and for a screen reader.

import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { afterEach, beforeEach, expect, test } from "vitest";
import { bundlePath } from "../../.ci/bundle.js";
import { keys, startConsole, stopConsoles } from "./harness.ts";

let dir = "";

beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), "pumpside-old-"));
  const made = ["new", "--label", "Größe 2", "--by", "KM", "--dir", dir];
  execFileSync(process.execPath, [bundlePath, ...made]);
});

afterEach(async () => {
  await stopConsoles();
  rmSync(dir, { recursive: true, force: true });
});

const run = ["run", "Größe 2"];

test.each([
  ["asked for", { LANG: "C.UTF-8" }, ["--ascii"]],
  ["the console of Linux", { TERM: "linux" }, []],
  ["another encoding", { LANG: "C.UTF-8", LC_ALL: "en_GB.ISO-8859-1" }, []],
])("plain ASCII: %s", async (_why, env, options) => {
  const console = startConsole({ dir, args: [...run, ...options], env });
  await console.waitFor("saved 1");
  const screen = await console.settled();
  expect(screen.join("\n")).toMatch(/^[\x20-\x7e\n]*$/);
  expect(screen[0]).toContain("Gro");
  await console.type("i");
  expect((await console.waitFor("drug")).join("\n")).toMatch(/^[\x20-\x7e\n]*$/);
});

test("all signs where the terminal can show them, and no colour where none is wanted", async () => {
  const console = startConsole({
    dir,
    args: run,
    env: { LANG: "C.UTF-8", LC_ALL: undefined, NO_COLOR: "1" },
  });
  await console.waitFor("saved 1");
  expect((await console.settled()).join("\n")).toContain("──");
  const { active } = console.terminal.buffer;
  const coloured = Array.from({ length: 24 * 80 }, (_, place) =>
    active.getLine(Math.floor(place / 80))?.getCell(place % 80),
  ).filter((cell) => cell && !cell.isFgDefault());
  expect(coloured).toEqual([]);
});

test("a screen reader is given sentences, and nothing anew each second", async () => {
  const console = startConsole({ dir, args: [...run, "--screen-reader"] });
  await console.waitFor("Last entry: number 1");
  await console.type(`h30000${keys.enter}`);
  await console.waitFor("Last entry: number 2");
  await console.waitFor("saved 2");
  const before = console.bytesWritten();
  await sleep(3200);
  // The minute may turn over once meanwhile.
  expect(console.bytesWritten() - before).toBeLessThan(1200);
});

test.runIf(spawnSync("tmux", ["-V"]).status === 0)("within tmux", async () => {
  const tmux = (...words: string[]) =>
    execFileSync("tmux", ["-L", `pumpside-${process.pid}`, "-f", "/dev/null", ...words], {
      encoding: "utf8",
    });
  const command = [process.execPath, bundlePath, "--dir", dir].map((word) => `'${word}'`).join(" ");
  tmux("new-session", "-d", "-x", "80", "-y", "24", command);
  try {
    let seen = "";
    for (let look = 0; look < 100 && !seen.includes("entries"); look++) {
      await sleep(50);
      seen = tmux("capture-pane", "-p");
    }
    expect(seen).toContain("pumpside");
    expect(seen).toContain("1 entries");
    tmux("send-keys", "Enter");
    for (let look = 0; look < 100 && !seen.includes("BYPASS"); look++) {
      await sleep(50);
      seen = tmux("capture-pane", "-p");
    }
    expect(seen).toContain("BYPASS");
  } finally {
    tmux("kill-server");
  }
});
