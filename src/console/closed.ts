/** A closed case takes nothing more until it is reopened, which is an entry of its own. */
import { courseOf } from "../figures/run.ts";
import type { CaseFile } from "../record/case.ts";

/** Why nothing can be written just now; `null` while the case is open. */
export const closedFault = (file: CaseFile): string | null =>
  courseOf(file).closedAt === null
    ? null
    : "The case is closed: press . and type your initials and a reason to reopen it.";
