/** Cases made by typing: each line is a time of day and what was typed then, `08:00 h28000`. */
import { logged } from "../../src/console/read-stroke.ts";
import { withEntry } from "../../src/console/write.ts";
import { type Run, readRun } from "../../src/figures/run.ts";
import { fromIso, type Instant } from "../../src/format/instant.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import type { Protocol } from "../../src/protocol/protocol.ts";
import type { CaseFile } from "../../src/record/case.ts";
import type { Draft } from "../../src/record/entry.ts";
import { openedCase as opened } from "../../src/record/opening.ts";

/** A moment of the day of operation, `10:42` or `10:42:30`, one hour east of UTC. */
export function at(clock: string): Instant {
  const instant = fromIso(`2026-03-04T${clock.length === 5 ? `${clock}:00` : clock}+01:00`);
  if (!instant) throw new Error(`"${clock}" is no time of day`);
  return instant;
}

export const minutes = (count: number): number => count * 60_000;

/** A case that AB opened at 07:00; the first entry typed is e2. */
export const openedCase = (protocol: Protocol = adultProtocol): CaseFile =>
  opened({ id: "case-0001", label: "invented", protocol, operator: "AB" }, at("07:00"));

/** The case with an entry that no stroke writes. */
export const given = (file: CaseFile, draft: Draft, clock: string): CaseFile =>
  withEntry(file, draft, { at: at(clock), now: at(clock), typed: "" });

/** The case after more lines were typed. */
export function typedOn(file: CaseFile, lines: readonly string[]): CaseFile {
  return lines.reduce((before, line) => {
    const [clock = "", ...rest] = line.split(" ");
    const after = logged(before, rest.join(" "), at(clock));
    if (!after.ok) throw new Error(`${line}: ${after.fault}`);
    return after.value;
  }, file);
}

export const typed = (lines: readonly string[], protocol?: Protocol): CaseFile =>
  typedOn(openedCase(protocol), lines);

/** What a case says at a time of day. */
export const runAt = (file: CaseFile, clock: string): Run => readRun(file, at(clock).ms);

/** The last entry of a case, without what every entry carries. */
export function lastDraft({ entries }: CaseFile): object {
  const { id, seq, at: when, loggedAt, by, typed: text, ...draft } = entries.at(-1) ?? {};
  return draft;
}

/** Why a line is refused. */
export function refusal(file: CaseFile, line: string, now: Instant = at("12:00")): string {
  const outcome = logged(file, line, now);
  if (outcome.ok) throw new Error(`"${line}" was taken: ${JSON.stringify(lastDraft(outcome.value))}`);
  return outcome.fault;
}
