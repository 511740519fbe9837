/** The shipped adult protocol with one thing edited, as the text of a file, and what is said about it. */
import { adultProtocol } from "../../src/protocol/adult.ts";
import { checkProtocolText } from "../../src/protocol/check.ts";
import { type Fault, faultText } from "../../src/protocol/fault.ts";

type Step = string | number;

/** The text of the file after `value` was written at `path`; undefined takes it out. */
export function edited(path: readonly Step[], value: unknown): string {
  const copy: unknown = structuredClone(adultProtocol);
  let here = copy as Record<Step, unknown>;
  for (const step of path.slice(0, -1)) here = here[step] as Record<Step, unknown>;
  here[path.at(-1) as Step] = value;
  return JSON.stringify(copy);
}

/** Every fault found in a text. */
export function faultsIn(text: string): readonly Fault[] {
  const checked = checkProtocolText(text);
  return checked.ok ? [] : checked.faults;
}

/** Every fault found in a text, a sentence each. */
export const sentencesFor = (text: string): string[] => faultsIn(text).map(faultText);

/** Every warning about a valid protocol, a sentence each. */
export function warningsFor(text: string): string[] {
  const checked = checkProtocolText(text);
  if (!checked.ok) throw new Error(checked.faults.map(faultText).join("\n"));
  return checked.warnings.map(faultText);
}
