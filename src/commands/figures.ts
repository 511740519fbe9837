/** `pumpside figures`: what a case says, as JSON or as text. */
import { figuresJson, figuresText } from "../reports/figures.ts";
import { caseNamed, complain, DONE, type Place, say, timeOf, WRONG_CALL } from "./place.ts";

export type FiguresOptions = Place & { readonly json?: boolean; readonly at?: string };

export async function figuresVerb(name: string, options: FiguresOptions): Promise<number> {
  const found = await caseNamed(name, options);
  if (!found.ok) return found.code;
  const { file } = found.value;
  const at = timeOf(options.at, file);
  if (!at.ok) return complain(at.fault, WRONG_CALL);
  say(options.json ? JSON.stringify(figuresJson(file, at.value), null, 2) : figuresText(file, at.value));
  return DONE;
}
