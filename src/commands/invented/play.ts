/** Playing a script: every step goes down the same path to the record as what a person types. */
import { logged } from "../../console/read-stroke.ts";
import { type Instant, toIso } from "../../format/instant.ts";
import { type Outcome, refused, taken } from "../../format/outcome.ts";
import { CASE_FORMAT, CASE_VERSION, type CaseFile } from "../../record/case.ts";
import type { Script, Step } from "./script.ts";

const SECOND = 1000;
const MINUTE = 60 * SECOND;
const DAY = 24 * 60 * MINUTE;

/** The moment of a step: its wall time on the day the case was opened. */
export function momentOf({ start }: Script, { at }: Pick<Step, "at">): Instant {
  const midnight = Math.floor((start.ms + start.offset * MINUTE) / DAY) * DAY;
  const ofDay = at.split(":").reduce((sum, part) => sum * 60 + Number(part), 0) * SECOND;
  return { ms: midnight + ofDay - start.offset * MINUTE, offset: start.offset };
}

/** The case as it is when it has only been opened. */
export function openedCase({ id, label, protocol, operator, place, start }: Script): CaseFile {
  const at = toIso(start);
  const first = { id: "e1", seq: 1, at, loggedAt: at, by: operator, typed: "" };
  return {
    format: CASE_FORMAT,
    version: CASE_VERSION,
    id,
    label,
    protocol,
    entries: [{ ...first, kind: "opened", operator, place }],
  };
}

/** The whole case, or the first step that was not taken and why. */
export function played(script: Script): Outcome<CaseFile> {
  let file = openedCase(script);
  for (const step of script.steps) {
    const after = logged(file, step.type, momentOf(script, step));
    if (!after.ok) return refused(`At ${step.at}, ${step.type}: ${after.fault}`);
    file = after.value;
  }
  return taken(file);
}
