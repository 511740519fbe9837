/** `pumpside check`: whether a case is valid, whole and untouched, or what exactly is not. */
import { caseFaults } from "../store/case-faults.ts";
import { closingFaults } from "./closing-faults.ts";
import { caseNamed, type Place } from "./place.ts";
import { CASE_FAULT, complain, DONE, say } from "./speak.ts";

/** Faults beyond these are counted, not listed. */
const LISTED = 20;
/** Characters of the seal that are shown: enough to compare by eye with what was noted or printed. */
const SEAL_SHOWN = 16;

export async function checkVerb(name: string, options: Place): Promise<number> {
  const found = await caseNamed(name, options);
  if (!found.ok) return found.code;
  const { file, recovered } = found.value;
  if (recovered !== null) return CASE_FAULT;
  const faults = [...caseFaults(file), ...closingFaults(file)];
  for (const fault of faults.slice(0, LISTED)) complain(`"${name}": ${fault}`, CASE_FAULT);
  if (faults.length > LISTED) complain(`"${name}": and ${faults.length - LISTED} more faults.`, CASE_FAULT);
  if (faults.length > 0) return CASE_FAULT;
  const last = file.entries.findLast(({ kind }) => kind === "closed" || kind === "reopened");
  say(
    `The case is valid and whole: ${file.entries.length} entries, ${last?.kind === "closed" ? "closed" : "still open"}, seal ${sealShown(file.seal)}.`,
  );
  return DONE;
}

/** In groups of four, as people read numbers to each other. */
const sealShown = (seal = ""): string => (seal.slice(0, SEAL_SHOWN).match(/.{4}/g) ?? []).join(" ");
