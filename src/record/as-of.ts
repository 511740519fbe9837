/** The record as it stood at an earlier moment. */
import { msOf } from "../format/instant.ts";
import type { CaseFile } from "./case.ts";

/** The case without what was written after `ms`: what anybody could have read then. */
export function asOf(file: CaseFile, ms: number): CaseFile {
  const later = file.entries.findIndex(({ loggedAt }) => msOf(loggedAt) > ms);
  return later < 0 ? file : { ...file, entries: file.entries.slice(0, later) };
}
