/** `pumpside list`: the cases of the folder, newest first, or those that are asked for in the order that is. */
import { caseLines } from "../reports/case-lines.ts";
import { type Choice, chosen, looksInside, sorted } from "../reports/choose-cases.ts";
import type { Sort } from "../reports/formats.ts";
import { casesWithProgress } from "./cases.ts";
import { dayFault } from "./days.ts";
import { folderOf, type Place } from "./place.ts";
import { complain, DONE, say, WRONG_CALL } from "./speak.ts";

type ListOptions = Place &
  Choice & { readonly sort?: Sort; readonly reverse?: boolean; readonly json?: boolean };

export async function listVerb(options: ListOptions): Promise<number> {
  const wrong = dayFault(options);
  if (wrong !== null) return complain(wrong, WRONG_CALL);
  const read = await casesWithProgress(folderOf(options), options);
  if (!read.ok) return read.code;
  const all = read.value;
  const cases = sorted(chosen(all, options), options.sort ?? "date", options.reverse);
  if (options.json) say(JSON.stringify(cases, null, 2));
  else if (all.length === 0) say("No case here yet: pumpside new makes one.");
  else say(cases.length === 0 ? "No case is like that." : caseLines(cases).join("\n"));
  const unseen = all.filter(({ fault }) => fault !== undefined).length;
  if (unseen > 0 && looksInside(options))
    complain(`cases that can't be read, and so could not be looked into: ${unseen}.`, DONE);
  return DONE;
}
