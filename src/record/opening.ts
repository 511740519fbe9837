/** A case as it begins: its head, and the entry that opens it. */
import { type Instant, toIso } from "../format/instant.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { CASE_FORMAT, CASE_VERSION, type CaseFile } from "./case.ts";

export type Opening = {
  readonly id: string;
  /** What people call the case. */
  readonly label: string;
  readonly protocol: Protocol;
  /** Initials of the person who runs the pump. */
  readonly operator: string;
  readonly place?: string | undefined;
};

/** The case when nothing has been written but that it was opened, at `now`. */
export function openedCase({ id, label, protocol, operator, place }: Opening, now: Instant): CaseFile {
  const at = toIso(now);
  const written = { id: "e1", seq: 1, at, loggedAt: at, by: operator, typed: "" };
  const opened = { ...written, kind: "opened" as const, operator };
  return {
    format: CASE_FORMAT,
    version: CASE_VERSION,
    id,
    label,
    protocol,
    entries: [place === undefined ? opened : { ...opened, place }],
  };
}
