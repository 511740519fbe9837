/** Prints the table of all published checks; the command ends with 1 when one is not met. */
import { outcomeOf } from "./check.ts";
import { CHECKS } from "./checks.ts";
import { rowsOf } from "./rows.ts";

const met = CHECKS.filter((check) => outcomeOf(check).met).length;

process.stdout.write(`${[...rowsOf(CHECKS), "", `${met} of ${CHECKS.length} checks met`].join("\n")}\n`);
process.exitCode = met === CHECKS.length ? 0 : 1;
