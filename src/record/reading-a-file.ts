/** From the text of a file to a case: upcast, checked, or one sentence that says what is wrong and where. */
import type * as z from "zod";
import { type Outcome, refused, taken } from "../format/outcome.ts";
import { harmless } from "../format/text.ts";
import { CASE_FORMAT, CASE_VERSION, type CaseFile } from "./case.ts";
import { caseSchemaFor } from "./case-schema.ts";
import { pointingFault } from "./correcting.ts";
import { type Entry, entrySchema } from "./entry.ts";
import { issueWords } from "./issue-words.ts";
import { standing } from "./standing.ts";
import { forbiddenKeyIn, parsedShallow } from "./untrusted.ts";
import { upcast } from "./upcast.ts";

/** More than two days of an entry every two seconds. */
export const MOST_ENTRIES = 100_000;

/** Reads a case from JSON text. Never throws; `fault` is a whole sentence without the file's name. */
export function readCase(text: string): Outcome<CaseFile> {
  if (text.trim() === "") return refused("the file is empty.");
  let json: unknown;
  try {
    json = parsedShallow(text);
  } catch {
    return refused("the file is not JSON, or was cut short.");
  }
  if (json === undefined) return refused("the file is nested too deeply for a case.");
  const key = forbiddenKeyIn(text, json);
  return key === null ? checkCase(json) : refused(`the file has a part called "${key}", which no case has.`);
}

/** Checks what JSON gave: our format, a version we know, every entry valid, every correction on a valid target. */
export function checkCase(json: unknown): Outcome<CaseFile> {
  if (typeof json !== "object" || json === null || (json as CaseFile).format !== CASE_FORMAT) {
    return refused(`the file is not a pumpside case (its "format" is not "${CASE_FORMAT}").`);
  }
  const { version } = json as { version?: unknown };
  if (typeof version === "number" && version > CASE_VERSION) {
    return refused(
      `the case was written by a newer version (file version ${version}, this program reads up to ${CASE_VERSION}).`,
    );
  }
  const { entries, protocol } = json as { entries?: unknown; protocol?: unknown };
  if (Array.isArray(entries) && entries.length > MOST_ENTRIES)
    return refused(`the file has ${entries.length} entries, more than a case can have (${MOST_ENTRIES}).`);
  const parsed = caseSchemaFor(protocol).safeParse(upcast(json), READ_ONCE);
  if (!parsed.success) return refused(`${faultOf(parsed.error)}.`);
  const fault = orderFault(parsed.data.entries) ?? correctionFault(parsed.data.entries);
  return fault ? refused(fault) : taken(parsed.data);
}

/** Code made for each schema would have to run for many files before it had won back the time of making it. */
const READ_ONCE = { jitless: true };

/** The first thing zod found, as place and reason: `entries 12 · ml: a volume is …`. */
export function faultOf(error: z.ZodError): string {
  const issue = error.issues[0];
  if (!issue) return "something is wrong with it";
  const place = harmless(
    issue.path.map((step) => (typeof step === "number" ? step + 1 : String(step))).join(" "),
  );
  const says = issueWords(issue);
  return place ? `at ${place}: ${says}` : says;
}

function orderFault(entries: readonly Entry[]): string | null {
  const wrong = entries.findIndex((entry, i) => entry.seq !== i + 1 || entry.id !== `e${i + 1}`);
  if (wrong < 0) return null;
  return `entry ${wrong + 1} is out of order: it says it is number ${entries[wrong]?.seq} (${entries[wrong]?.id}).`;
}

/** Corrections point back, and leave entries that are valid: not each by itself, but all that are in force together. */
function correctionFault(entries: readonly Entry[]): string | null {
  for (const { entry, corrections } of standing(entries).written) {
    const pointing = pointingFault(entry);
    if (pointing !== null) return `entry ${entry.seq} ${pointing}.`;
    const amended = corrections.findLast(({ kind }) => kind === "amend");
    if (amended && !entrySchema.safeParse(entry).success)
      return `entry ${amended.seq} would make ${entry.id} an entry that is not valid.`;
  }
  return null;
}
