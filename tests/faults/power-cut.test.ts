// The power goes at every point of 200 saves: there is always a whole file, and nothing reported saved is missing.

import { expect, test } from "vitest";
import { lowCase } from "../../src/store/case-adapter.ts";
import { chainFault } from "../../src/store/chain-fault.ts";
import { caseIn } from "../../src/store/read-case-file.ts";
import { aCase } from "../store/cases.ts";
import { withNotes } from "../store/notes.ts";
import { type Chance, simulatedDisk } from "./simulated-disk.ts";

const SAVES = 200;
/** Ways in which the disk may come back after each cut. */
const WAYS = 8;
const PATH = "/cases/case-20260304-abcdef.json";

/** A row of numbers between nought and one that is the same for the same seed. */
function chanceFrom(seed: number): Chance {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** What a text holds after a cut; most texts are found many times. */
function reader() {
  const known = new Map<string, { count: number; fault: string | null }>();
  return (text: string) => {
    const before = known.get(text);
    if (before) return before;
    const found = caseIn(text);
    const now = found.ok
      ? { count: found.value.entries.length, fault: chainFault(found.value) }
      : { count: -1, fault: found.fault };
    known.set(text, now);
    return now;
  };
}

test(`a power cut at every point of ${SAVES} saves leaves a whole file that is not behind what was reported`, async () => {
  const read = reader();
  let saved = 0;
  let points = 0;
  let behind = 0;
  const cut = (): void => {
    for (let way = 0; way < WAYS; way++) {
      const found = simulated.restart(chanceFrom(points * WAYS + way)).get(PATH);
      if (found === undefined) {
        expect(saved, `cut ${points}: no file`).toBe(0);
        continue;
      }
      const { count, fault } = read(found.toString());
      expect(fault, `cut ${points}, way ${way}`).toBeNull();
      expect(count).toBeGreaterThanOrEqual(saved);
      if (count === saved) behind += 1;
    }
    points += 1;
  };
  const simulated = simulatedDisk(cut);
  const low = lowCase(PATH, aCase(), { disk: simulated.disk });
  for (let save = 0; save < SAVES; save++) {
    await low.write();
    saved = low.data.entries.length;
    low.data = withNotes(low.data, 1);
  }
  cut();
  expect(points).toBeGreaterThanOrEqual(SAVES * 8);
  // Else the disk would lose nothing, and the test would show nothing.
  expect(behind).toBeGreaterThan(points);
});

test("the same disk does lose what is renamed without being forced: the test can fail", async () => {
  const simulated = simulatedDisk(() => {});
  const { disk } = simulated;
  const file = await disk.open("/cases/new", "wx");
  const { bytesWritten } = await file.writev([Buffer.from("content")]);
  await disk.rename("/cases/new", PATH);
  const found = new Set(
    Array.from({ length: 100 }, (_, seed) => simulated.restart(chanceFrom(seed)).get(PATH)?.toString()),
  );
  expect(found.has(undefined)).toBe(true);
  expect(found.has("")).toBe(true);
  expect(found.has("content".slice(0, bytesWritten))).toBe(true);
});
