/** `pumpside figures`: what a case says, as JSON or as text. */
import { asOf } from "../record/as-of.ts";
import { figuresJson, figuresText } from "../reports/figures.ts";
import { caseNamed, type Place, timeOf } from "./place.ts";
import { complain, DONE, say, WRONG_CALL } from "./speak.ts";

type FiguresOptions = Place & { readonly json?: boolean; readonly at?: string };

export async function figuresVerb(name: string, options: FiguresOptions): Promise<number> {
  const found = await caseNamed(name, options);
  if (!found.ok) return found.code;
  const at = timeOf(options.at, found.value.file);
  if (!at.ok) return complain(at.fault, WRONG_CALL);
  const file = asOf(found.value.file, at.value.ms);
  say(options.json ? JSON.stringify(figuresJson(file, at.value), null, 2) : figuresText(file, at.value));
  return DONE;
}
