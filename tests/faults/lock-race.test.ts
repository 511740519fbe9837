// Processes that find the same dead lock at the same instant: one of them gets it.

import { type ChildProcess, fork } from "node:child_process";
import { once } from "node:events";
import { readdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, expect, test } from "vitest";
import { lockOf } from "../../src/store/lock.ts";
import { thisHolder } from "../../src/store/lock-holder.ts";
import { scratchFolder } from "../store/cases.ts";

const TAKERS = 4;
const ROUNDS = 200;
const taker = fileURLToPath(new URL("take-lock.ts", import.meta.url));

let scratch: Awaited<ReturnType<typeof scratchFolder>>;
let takers: ChildProcess[];

beforeAll(async () => {
  scratch = await scratchFolder();
  takers = Array.from({ length: TAKERS }, () => fork(taker, { execArgv: [] }));
  await Promise.all(takers.map((child) => once(child, "message")));
});
afterAll(async () => {
  for (const child of takers) child.disconnect();
  await Promise.all(takers.map((child) => once(child, "exit")));
  await scratch.remove();
});

async function ask(child: ChildProcess, asked: object | string): Promise<string> {
  const answer = once(child, "message");
  child.send(asked);
  return (await answer)[0];
}

/** A lock of a process that has ended: no system gives out a number as high as this. */
const dead = () => JSON.stringify({ ...thisHolder(), pid: 2 ** 22 + 1 });

test.each(["a dead lock", "no lock"])(
  `of ${TAKERS} processes that find %s, one gets it, ${ROUNDS} times`,
  async (what) => {
    const path = join(scratch.folder, "case-20260304-abcdef.json");
    for (let round = 0; round < ROUNDS; round++) {
      if (what === "a dead lock") await writeFile(lockOf(path), dead());
      const answers = await Promise.all(takers.map((child) => ask(child, { take: path })));
      expect(answers.toSorted()).toEqual(["held", "refused", "refused", "refused"]);
      await ask(takers[answers.indexOf("held")] as ChildProcess, "release");
      expect(await readdir(scratch.folder)).toEqual([]);
    }
  },
);
