/** How verbs speak: what they say, what they complain of, and the code they end with. */
import { createInterface } from "node:readline";
import { harmless } from "../format/text.ts";

/** Exit codes of every verb. */
export const DONE = 0;
export const CASE_FAULT = 1;
export const WRONG_CALL = 2;

export const say = (text: string): void => void process.stdout.write(`${text}\n`);

/** One sentence on standard error; gives the exit code back, so that a verb ends with it. */
export function complain(sentence: string, code: number): number {
  process.stderr.write(`pumpside: ${harmless(sentence)}\n`);
  return code;
}

/** Asks on the terminal; only a plain yes agrees. */
export async function agreed(question: string): Promise<boolean> {
  const lines = createInterface({ input: process.stdin, output: process.stderr });
  const answer = await new Promise<string>((answered) => {
    lines.once("close", () => answered(""));
    lines.question(`pumpside: ${harmless(question)} `, answered);
  });
  lines.close();
  return /^y(es)?$/i.test(answer.trim());
}
