/** The bytes of a case made ready ahead: the first save of a long one need not make the text of all its entries. */
import type { CaseFile } from "../record/case.ts";
import { caseBytes } from "./case-bytes.ts";

/** Milliseconds after the start, when the first screen has been drawn. */
const AFTER_OPENING = 300;
/** Entries at once: no key has to wait for more. */
const PIECE = 250;

/** `caseBytes`, which goes through the entries that `begun` has already while nothing is being saved. */
export function readyBytes(begun?: CaseFile): (file: CaseFile) => readonly Uint8Array[] {
  const bytesOf = caseBytes();
  let later: NodeJS.Timeout | undefined;

  const goOn = (file: CaseFile, count: number): void => {
    bytesOf({ ...file, entries: file.entries.slice(0, count) });
    if (count < file.entries.length) later = setTimeout(goOn, 0, file, count + PIECE).unref();
  };
  if (begun !== undefined) later = setTimeout(goOn, AFTER_OPENING, begun, PIECE).unref();

  return (file) => {
    clearTimeout(later);
    return bytesOf(file);
  };
}
