// A hundred thousand damaged case files and as many protocol files: a sentence or a value, never a throw or a hang.

import { type ChildProcess, fork } from "node:child_process";
import { once } from "node:events";
import { readdir, readFile, writeFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { describe, expect, onTestFinished, test } from "vitest";
import { openCase } from "../../src/store/open-case.ts";
import { testFolder } from "../store/test-folder.ts";
import { damaged, diceFrom } from "./mutations.ts";
import { type Asked, soundText, type Told } from "./read-damaged.ts";

const FILES = 100_000;
const READERS = 2;
/** Milliseconds that no file may take; a garbage collection or another program may fall into one. */
const LONGEST = 5000;

const reader = fileURLToPath(new URL("read-damaged.ts", import.meta.url));

async function readBy(child: ChildProcess, asked: Asked): Promise<Told> {
  const told = once(child, "message");
  child.send(asked);
  const [answer] = await Promise.race([
    told,
    once(child, "exit").then(() => Promise.reject(new Error("died"))),
  ]);
  return answer;
}

/** All damaged texts of a kind, by several processes at once. */
async function readAll(kind: Asked["kind"]): Promise<Told> {
  const share = FILES / READERS;
  const parts = await Promise.all(
    Array.from({ length: READERS }, async (_, part) => {
      const child = fork(reader, { execArgv: [] });
      onTestFinished(() => child.disconnect());
      return readBy(child, { kind, from: part * share, to: (part + 1) * share });
    }),
  );
  const sum = (of: "sound" | "recovered") => parts.reduce((all, part) => all + part[of], 0);
  return {
    sound: sum("sound"),
    recovered: sum("recovered"),
    longest: Math.max(...parts.map(({ longest }) => longest)),
    wrong: parts.flatMap(({ wrong }) => wrong).slice(0, 20),
  };
}

describe(`${FILES} damaged`, () => {
  test("case files are read, checked and put together into a sentence or a case", async () => {
    const { sound, recovered, longest, wrong } = await readAll("case");
    expect(wrong).toEqual([]);
    expect(longest).toBeLessThan(LONGEST);
    // Damage of every depth: some of it hits nothing that matters, and much can be recovered.
    expect(sound).toBeGreaterThan(0);
    expect(recovered).toBeGreaterThan(FILES / 100);
  }, 600_000);

  test("protocol files are checked into faults or a protocol", async () => {
    const { sound, longest, wrong } = await readAll("protocol");
    expect(wrong).toEqual([]);
    expect(longest).toBeLessThan(LONGEST);
    expect(sound).toBeGreaterThan(0);
  }, 600_000);
});

test("a thousand damaged files on the disk are left as they were by opening them to look", async () => {
  const { folder, path } = await testFolder();
  const text = soundText("case");
  for (let seed = 0; seed < 1000; seed++) {
    const one = Buffer.from(damaged(text, diceFrom(seed)));
    await writeFile(path, one);
    await openCase(path);
    expect((await readFile(path)).equals(one)).toBe(true);
  }
  expect(await readdir(folder)).toEqual(["case-20260304-abcdef.json"]);
});
