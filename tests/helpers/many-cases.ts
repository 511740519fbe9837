// Many cases for lists, audits and exports: the invented ones, played through the console's own code, on other days, at another pace and with other values.

import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { INVENTED } from "../../src/commands/invented/index.ts";
import { played } from "../../src/commands/invented/play.ts";
import { fromIso, msOf, toIso } from "../../src/format/instant.ts";
import type { CaseFile } from "../../src/record/case.ts";
import type { Entry } from "../../src/record/entry.ts";
import { caseBytes } from "../../src/store/case-bytes.ts";
import { newCasePath } from "../../src/store/folder.ts";

const DAY = 24 * 60 * 60_000;

/** Numbers from 0 to 1, the same each time for the same seed. */
export function numbersFrom(seed: number): () => number {
  let state = seed + 0x6d2b79f5;
  return () => {
    state = Math.imul(state ^ (state >>> 15), state | 1);
    state ^= state + Math.imul(state ^ (state >>> 7), state | 61);
    return ((state ^ (state >>> 14)) >>> 0) / 2 ** 32;
  };
}

const templates: readonly CaseFile[] = INVENTED.map((script) => {
  const outcome = played(script);
  if (!outcome.ok) throw new Error(outcome.fault);
  return outcome.value;
});

const letters = (n: number): string =>
  Array.from({ length: 6 }, (_, i) => String.fromCharCode(97 + (Math.floor(n / 26 ** (5 - i)) % 26))).join(
    "",
  );

/** The nth of many cases, three a day back from the first of them; always the same for the same number. */
export function manyCase(n: number): CaseFile {
  const number = numbersFrom(n);
  const template = templates[n % templates.length] as CaseFile;
  const [back, stretch] = [Math.floor(n / 3) * DAY, 0.8 + number() / 2];
  const start = msOf(template.entries[0]?.at ?? "");
  const earlier = (iso: string): string => {
    const at = fromIso(iso);
    if (at === null) throw new Error(`"${iso}" is no time`);
    return toIso({ ms: Math.round(start + (at.ms - start) * stretch) - back, offset: at.offset });
  };
  const day = earlier(template.entries[0]?.at ?? "")
    .slice(0, 10)
    .replaceAll("-", "");
  return {
    ...template,
    id: `${day}-${letters(n)}`,
    label: `invented ${n}`,
    entries: template.entries.map((entry) => varied(entry, earlier, number)),
  };
}

function varied(entry: Entry, earlier: (iso: string) => string, number: () => number): Entry {
  const moved = { ...entry, at: earlier(entry.at), loggedAt: earlier(entry.loggedAt) };
  const times = (value: number, spread: number) =>
    Math.round(value * (1 + spread * (number() - 0.5)) * 10) / 10;
  switch (moved.kind) {
    case "act":
      return { ...moved, seconds: Math.round(times(moved.seconds, 0.2)) };
    case "readings":
    case "gas":
      return {
        ...moved,
        values: Object.fromEntries(
          Object.entries(moved.values).map(([name, value]) => [
            name,
            name === "glucose" || name === "carbonDioxide" || name === "flow"
              ? times(value as number, 0.2)
              : value,
          ]),
        ),
      } as Entry;
    case "reminder":
      return { ...moved, dueAt: earlier(moved.dueAt) };
    default:
      return moved;
  }
}

/** Writes so many cases into a folder, as the program would have kept them. */
export async function writeMany(folder: string, count: number, first = 0): Promise<void> {
  for (let n = first; n < first + count; n++) {
    const file = manyCase(n);
    await writeFile(newCasePath(folder, file.id), Buffer.concat([...caseBytes()(file)]));
  }
}

/** What a damaged case looks like: cut short. */
export const writeCutShort = (folder: string, id: string): Promise<void> =>
  writeFile(join(folder, `case-${id}.json`), '{"format":"pumpside-case","version":1,');
