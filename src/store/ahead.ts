/** Copies of a case that know more of it than its own file: what was typed while only they could be written. */
import type { CaseFile } from "../record/case.ts";
import { isStateOf } from "./case-bytes.ts";
import { hashOf, prevOf } from "./chain.ts";
import { chainFault } from "./chain-fault.ts";
import { bytesOf, caseInBytes } from "./read-case-file.ts";
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
  const read = await Promise.all(copies.map((copy) => bytesWithin(PATIENCE, copy, safe)));
  return read
    .flatMap((bytes) => laterIn(bytes, file) ?? [])
    .reduce<CaseFile | null>(
      (longest, later) => (later.entries.length > (longest?.entries.length ?? 0) ? later : longest),
      null,
    );
}

const bytesWithin = (ms: number, path: string, safe: Safe): Promise<Uint8Array | null> =>
  within(
    ms,
    bytesOf(path, safe).then(
      ({ bytes }) => bytes,
      () => null,
    ),
    null,
  );

/** What a copy knows more. Nearly all of them are the case as it is: comparing bytes tells that far sooner than reading them. */
function laterIn(bytes: Uint8Array | null, file: CaseFile): CaseFile | null {
  if (bytes === null || isStateOf(bytes, file)) return null;
  const read = caseInBytes(bytes);
  return read.ok && goesOnFrom(file, read.value) ? read.value : null;
}
