/** Everything that can be wrong with a case that can be read: what was done to it by hand, its times, its closing. */
import type { CaseFile } from "../record/case.ts";
import type { Entry } from "../record/entry.ts";
import { chainFault } from "./chain-fault.ts";
import { timeFaults } from "./times-fault.ts";

/** What may follow a closing: opening the case again, or news of the clock. */
const AFTER_CLOSING = new Set<Entry["kind"]>(["reopened", "clock"]);

/** A sentence for each fault, the broken chain first; none for a case that is whole. */
export function caseFaults(file: CaseFile): string[] {
  const chain = chainFault(file);
  return [
    ...(chain === null ? [] : [chain]),
    ...beginningFaults(file),
    ...timeFaults(file),
    ...closingFaults(file),
  ];
}

function beginningFaults({ entries }: CaseFile): string[] {
  if (entries.length === 0) return ["the case has no entries."];
  return entries[0]?.kind === "opened" ? [] : ["the first entry does not open the case."];
}

function closingFaults({ entries }: CaseFile): string[] {
  let closedBy: Entry | null = null;
  const faults: string[] = [];
  for (const entry of entries) {
    if (closedBy !== null && !AFTER_CLOSING.has(entry.kind)) {
      faults.push(`entry ${entry.seq} was written after the case was closed (entry ${closedBy.seq}).`);
    }
    if (entry.kind === "closed") closedBy = entry;
    if (entry.kind === "reopened") closedBy = null;
  }
  return faults;
}
