/** Playing a script: every step goes down the same path to the record as what a person types. */

import { logged } from "../../console/read-stroke.ts";
import { HOUR, MINUTE } from "../../format/duration.ts";
import type { Instant } from "../../format/instant.ts";
import { type Outcome, refused, taken } from "../../format/outcome.ts";
import type { CaseFile } from "../../record/case.ts";
import { openedCase } from "../../record/opening.ts";
import type { Script, Step } from "./script.ts";

const SECOND = 1000;
const DAY = 24 * HOUR;

/** The moment of a step: its wall time on the day the case was opened. */
export function momentOf({ start }: Script, { at }: Pick<Step, "at">): Instant {
  const midnight = Math.floor((start.ms + start.offset * MINUTE) / DAY) * DAY;
  const ofDay = at.split(":").reduce((sum, part) => sum * 60 + Number(part), 0) * SECOND;
  return { ms: midnight + ofDay - start.offset * MINUTE, offset: start.offset };
}

/** The whole case, or the first step that was not taken and why. */
export function played(script: Script): Outcome<CaseFile> {
  let file = openedCase(script, script.start);
  for (const step of script.steps) {
    const after = logged(file, step.type, momentOf(script, step));
    if (!after.ok) return refused(`At ${step.at}, ${step.type}: ${after.fault}`);
    file = after.value;
  }
  return taken(file);
}
