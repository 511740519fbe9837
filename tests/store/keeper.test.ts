import { beforeEach, describe, expect, test } from "vitest";
import type { CaseFile } from "../../src/record/case.ts";
import type { Disk } from "../../src/store/disk.ts";
import { type KeeperTools, keepCase } from "../../src/store/keeper.ts";
import { readCaseFile } from "../../src/store/read-case-file.ts";
import { aCase, withEntry } from "./cases.ts";
import { failing, recordingDisk } from "./disks.ts";
import { withNotes } from "./notes.ts";
import { testFolder } from "./test-folder.ts";

let path: string;
beforeEach(async () => {
  ({ path } = await testFolder());
});

/** A keeper of a new case, with what it told in order. */
function kept(tools: Partial<KeeperTools> = {}) {
  const told: (number | string)[] = [];
  const keeper = keepCase({
    path,
    file: aCase(),
    onSaved: (seq) => told.push(seq),
    onFault: (words) => told.push(words),
    ...tools,
  });
  return { keeper, told };
}

async function onDisk(): Promise<number> {
  const read = await readCaseFile(path);
  if (!read.ok) throw new Error(read.fault);
  return read.value.file.entries.length;
}

/** Waits that end when the test says so, and how long each would have been. */
function waits() {
  const pauses: number[] = [];
  let end = () => {};
  const wait = (ms: number, signal: AbortSignal) =>
    new Promise<void>((resolve) => {
      pauses.push(ms);
      end = resolve;
      signal.addEventListener("abort", () => resolve());
    });
  return { wait, pauses, end: () => end() };
}

const until = async (done: () => boolean): Promise<void> => {
  while (!done()) await new Promise(setImmediate);
};

const states = (count: number): CaseFile[] => {
  const all = [withNotes(aCase(), 1)];
  while (all.length < count) all.push(withNotes(all.at(-1) as CaseFile, 1));
  return all;
};

describe("what is kept", () => {
  test("is told as saved once it is on the disk under its name", async () => {
    const { disk, calls } = recordingDisk();
    const { keeper, told } = kept({
      disk,
      onSaved: (seq) => calls.push(`saved ${seq}`),
    });
    keeper.keep(withNotes(aCase(), 4));
    expect(await keeper.settle()).toBe(true);
    expect(calls.slice(-4)).toEqual([
      expect.stringMatching(/^open pumpside-store-\w+ r$/),
      expect.stringMatching(/^sync/),
      expect.stringMatching(/^close/),
      "saved 5",
    ]);
    expect(told).toEqual([]);
  });

  test("is saved by itself, without being asked to settle", async () => {
    const { keeper, told } = kept();
    keeper.keep(withNotes(aCase(), 1));
    await until(() => told.length > 0);
    expect(told).toEqual([2]);
    expect(await onDisk()).toBe(2);
  });

  test("is saved in its newest state, one save at a time", async () => {
    let open = 0;
    let most = 0;
    const { disk } = recordingDisk();
    const watched: Disk = {
      ...disk,
      async open(...asked) {
        if (asked[1] === "wx") most = Math.max(most, ++open);
        return disk.open(...asked);
      },
      async rename(...asked) {
        open -= 1;
        await disk.rename(...asked);
      },
    };
    const { keeper, told } = kept({ disk: watched });
    for (const file of states(50)) keeper.keep(file);
    expect(await keeper.settle()).toBe(true);
    expect(most).toBe(1);
    expect(told).toEqual([2, 51]);
  });

  test("while nothing is new is not written again", async () => {
    const { disk, calls } = recordingDisk();
    const { keeper } = kept({ disk });
    expect(await keeper.settle()).toBe(true);
    await keeper.close();
    expect(calls).toEqual([]);
  });

  test("after a state that was on the disk already is still saved", async () => {
    const file = aCase();
    const { keeper, told } = kept({ file });
    keeper.keep(file);
    keeper.keep(withNotes(file, 1));
    expect(await keeper.settle()).toBe(true);
    expect(told).toEqual([2]);
  });
});

describe("a save that fails", () => {
  test("is told in words and tried again with growing pauses until it succeeds", async () => {
    const { wait, pauses, end } = waits();
    const { keeper, told } = kept({ disk: failing({ call: "write", code: "ENOSPC", times: 8 }), wait });
    keeper.keep(withNotes(aCase(), 1));
    for (let tries = 1; tries <= 8; tries++) {
      await until(() => pauses.length === tries);
      end();
    }
    await until(() => told.length === 9);
    expect(told).toEqual([...Array(8).fill("the disk is full"), 2]);
    expect(pauses).toEqual([100, 200, 400, 800, 1600, 3000, 3000, 3000]);
    expect(await onDisk()).toBe(2);
  });

  test("is not waited out when somebody asks whether everything is saved", async () => {
    const { wait, pauses } = waits();
    const { keeper, told } = kept({ disk: failing({ call: "rename", code: "ENOENT", times: 2 }), wait });
    keeper.keep(withNotes(aCase(), 1));
    await until(() => pauses.length === 1);
    expect(await keeper.settle()).toBe(false);
    expect(await keeper.settle()).toBe(true);
    expect(told).toEqual(["the folder is gone", "the folder is gone", 2]);
  });

  test("drops nothing that was kept meanwhile, and the next save after it does not wait", async () => {
    const { wait, pauses } = waits();
    const { keeper, told } = kept({ disk: failing({ call: "sync", code: "EIO", times: 1 }), wait });
    const [first, second, third] = states(3) as [CaseFile, CaseFile, CaseFile];
    keeper.keep(first);
    await until(() => pauses.length === 1);
    keeper.keep(second);
    expect(await keeper.settle()).toBe(true);
    keeper.keep(third);
    await until(() => told.length === 3);
    expect(told).toEqual(["the disk reports a fault", 3, 4]);
    expect(await onDisk()).toBe(4);
  });

  test("because an entry is not valid says which", async () => {
    const { wait } = waits();
    const { keeper, told } = kept({ wait });
    keeper.keep(withEntry(aCase(), { kind: "level", ml: -5 }));
    expect(await keeper.settle()).toBe(false);
    expect(told[0]).toMatch(/^entry 2 is not valid: at ml: /);
    await keeper.close();
  });
});

describe("a disk that does not answer", () => {
  /** A disk whose forcing waits until the test lets it answer. */
  function hanging() {
    const { disk } = recordingDisk();
    const { promise: answer, resolve: letAnswer } = Promise.withResolvers<void>();
    const slow: Disk = {
      ...disk,
      async open(...asked) {
        await answer;
        return disk.open(...asked);
      },
    };
    return { disk: slow, letAnswer };
  }

  test("is told, holds nobody up, and is believed when it answers", async () => {
    const { disk, letAnswer } = hanging();
    const { keeper, told } = kept({ disk, hangingAfter: 20 });
    keeper.keep(withNotes(aCase(), 1));
    expect(await keeper.settle(50)).toBe(false);
    expect(told).toEqual(["the disk does not answer"]);
    keeper.keep(withNotes(aCase(), 4));
    letAnswer();
    expect(await keeper.settle()).toBe(true);
    expect(told).toEqual(["the disk does not answer", 2, 5]);
  });

  test("is not waited for at the end, which says what is not saved", async () => {
    const { disk, letAnswer } = hanging();
    const { keeper } = kept({ disk });
    keeper.keep(withNotes(aCase(), 3));
    expect(await keeper.close(50)).toEqual({ unsaved: 3, hanging: true });
    letAnswer();
  });
});

describe("closing", () => {
  test("waits for the last save", async () => {
    const { keeper, told } = kept();
    for (const file of states(5)) keeper.keep(file);
    await keeper.close();
    expect(told.at(-1)).toBe(6);
    expect(await onDisk()).toBe(6);
  });

  test("tries a last time and then ends, saved or not", async () => {
    const { wait, pauses } = waits();
    const { keeper, told } = kept({ disk: failing({ call: "write", code: "ENOSPC" }), wait });
    keeper.keep(withNotes(aCase(), 1));
    await until(() => pauses.length === 1);
    await keeper.close();
    expect(told).toEqual(["the disk is full", "the disk is full"]);
    expect(await keeper.settle()).toBe(false);
  });

  test("refuses in words what comes after it", async () => {
    const { keeper, told } = kept();
    await keeper.close();
    keeper.keep(withNotes(aCase(), 1));
    await until(() => told.length === 1);
    expect(told).toEqual(["the case has been let go"]);
  });
});
