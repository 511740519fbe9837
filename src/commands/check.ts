/** `pumpside check`: whether a case is valid and whole, in one sentence. */
import { chainFault } from "../store/chain.ts";
import { CASE_FAULT, caseNamed, complain, DONE, type Place, say } from "./place.ts";

export async function checkVerb(name: string, options: Place): Promise<number> {
  const found = await caseNamed(name, options);
  if (!found.ok) return found.code;
  const { file } = found.value;
  const fault = chainFault(file);
  if (fault !== null) return complain(`"${name}": ${fault}`, CASE_FAULT);
  const last = file.entries.findLast(({ kind }) => kind === "closed" || kind === "reopened");
  say(
    `The case is valid and whole: ${file.entries.length} entries, ${last?.kind === "closed" ? "closed" : "still open"}.`,
  );
  return DONE;
}
