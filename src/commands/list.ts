/** `pumpside list`: the cases of the folder, newest first. */

import { clockTimeOf, dayOf } from "../format/instant.ts";
import { harmless } from "../format/text.ts";
import { type ListedCase, listCases } from "../store/case-list.ts";
import { folderOf, type Place } from "./place.ts";
import { DONE, say } from "./speak.ts";

export type ListOptions = Place & { readonly json?: boolean };

export async function listVerb(options: ListOptions): Promise<number> {
  const cases = await listCases(folderOf(options));
  if (options.json) say(JSON.stringify(cases, null, 2));
  else say(cases.length === 0 ? "No case here yet: pumpside new makes one." : cases.map(row).join("\n"));
  return DONE;
}

function row(one: ListedCase): string {
  if (one.fault !== undefined) return `${one.id.padEnd(18)} cannot be read: ${harmless(one.fault)}`;
  const { id, opened, state, entries, label, operation } = one;
  const when = opened === "" ? "" : `${dayOf(opened)} ${clockTimeOf(opened).slice(0, 5)}`;
  const damaged = one.damage ? "  DAMAGED, recovered in part" : "";
  const what = `${operation ? `  ${harmless(operation)}` : ""}${damaged}`;
  return `${id.padEnd(18)} ${when}  ${state.padEnd(6)} ${String(entries).padStart(5)} entries  ${harmless(label)}${what}`;
}
