/** Copies of a case that know more of it than its own file: what was typed while only they could be written. */
import type { CaseFile } from "../record/case.ts";
import { hashOf, prevOf } from "./chain.ts";
import { chainFault } from "./chain-fault.ts";
import { readCaseFile } from "./read-case-file.ts";
import { plain, type Safe } from "./safe.ts";
import { within } from "./waiting.ts";

/** Whether `later` is `file` and more: the same entries up to its last, by the chain, and nothing out of place after them. */
export function goesOnFrom(file: CaseFile, later: CaseFile): boolean {
  const next = later.entries[file.entries.length];
  const last = file.entries.at(-1);
  if (last === undefined || next === undefined || later.id !== file.id) return false;
  return prevOf(next) === (file.seal ?? hashOf(last)) && chainFault(later) === null;
}

/** Milliseconds that a copy is waited for: a share that hangs keeps no case from being opened. */
const PATIENCE = 2000;

/** The longest of the `copies` that goes on from `file`, as it was read; `null` where none does. Never rejects. */
export async function aheadOf(
  file: CaseFile,
  copies: readonly string[],
  safe: Safe = plain,
): Promise<CaseFile | null> {
  const read = await Promise.all(copies.map((copy) => within(PATIENCE, readCaseFile(copy, safe), null)));
  return read
    .flatMap((one) => (one?.ok ? [one.value.file] : []))
    .filter((copy) => goesOnFrom(file, copy))
    .reduce<CaseFile | null>(
      (longest, copy) => (copy.entries.length > (longest?.entries.length ?? 0) ? copy : longest),
      null,
    );
}
