/** Whether a closed case still says what it said when it was closed. */
import { closingFigures } from "../figures/closing-figures.ts";
import { completenessOf } from "../figures/completeness.ts";
import { type Run, readRun } from "../figures/run.ts";
import { msOf } from "../format/instant.ts";
import type { CaseFile } from "../record/case.ts";
import type { EntryOf } from "../record/entry.ts";

/** A sentence for each figure and each item of the list that the entries before a closing do not give. */
export const closingFaults = (file: CaseFile): string[] =>
  file.entries.flatMap((entry, place) => {
    if (entry.kind !== "closed") return [];
    const run = readRun({ ...file, entries: file.entries.slice(0, place) }, msOf(entry.at));
    return [...figureFaults(entry, run), ...itemFaults(entry, run)];
  });

function figureFaults({ seq, figures = [] }: EntryOf<"closed">, run: Run): string[] {
  const now = new Map(closingFigures(run).map(({ name, value }) => [name, value]));
  return figures
    .filter(({ name, value }) => now.has(name) && !isSame(now.get(name), value))
    .map(
      ({ name, value }) =>
        `the closing (entry ${seq}) says ${name} ${value ?? "unknown"}, and the entries before it give ${now.get(name) ?? "unknown"}.`,
    );
}

/** Sums of decimals differ in the last places with the order in which they are added. */
const isSame = (one: number | undefined, other: number | undefined): boolean =>
  one === undefined || other === undefined ? one === other : Math.abs(one - other) < 1e-6;

function itemFaults({ seq, completeness = [] }: EntryOf<"closed">, run: Run): string[] {
  const now = new Map(completenessOf(run).map(({ item, state }) => [item, state]));
  return completeness
    .filter(({ item, state }) => now.has(item) && now.get(item) !== state)
    .map(
      ({ item, state }) =>
        `the closing (entry ${seq}) says "${item}" was ${state}, and by the entries before it it is ${now.get(item)}.`,
    );
}
