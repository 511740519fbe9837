/** `pumpside demo`: an invented case played in the console itself, or printed as text where there is no terminal. */
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { entryWords } from "../figures/entry-words.ts";
import { CAUTIONS } from "../format/cautions.ts";
import { clockTimeOf } from "../format/instant.ts";
import { figuresText } from "../reports/figures.ts";
import { openDemo } from "./demo-session.ts";
import { INVENTED } from "./invented/index.ts";
import { momentOf, played } from "./invented/play.ts";
import type { Script } from "./invented/script.ts";
import { hasTerminal, show } from "./show.tsx";
import { CASE_FAULT, complain, DONE, say, WRONG_CALL } from "./speak.ts";
import { trainingInConsole } from "./training.ts";

const USUAL_SPEED = 60;

/** Who types along has the pace of life. */
const TYPED_SPEED = 1;

type DemoOptions = { readonly speed?: string; readonly typed?: boolean };

export async function demoVerb({ speed, typed = false }: DemoOptions): Promise<number> {
  const factor = Number(speed ?? (typed ? TYPED_SPEED : USUAL_SPEED));
  if (!(factor > 0 && factor <= 10_000))
    return complain(`"${speed}" is no speed: type a number such as 60 for a minute a second.`, WRONG_CALL);
  if (typed) return trainingInConsole(factor);
  if (!hasTerminal()) return asText(INVENTED[0] as Script);
  await demoInConsole(factor);
  return DONE;
}

/** Plays the first invented case in the console. Its file lies in a folder of its own that goes with it. */
export async function demoInConsole(speed = USUAL_SPEED): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), "pumpside-demo-"));
  try {
    await show(await openDemo(INVENTED[0] as Script, join(folder, "case.json"), speed));
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** The whole run, a line an entry, and the figures at its end. */
function asText(script: Script): number {
  const file = played(script);
  if (!file.ok) return complain(file.fault, CASE_FAULT);
  const { entries, protocol, label } = file.value;
  say(label);
  for (const entry of entries) {
    const { subject, says } = entryWords(entry, protocol);
    say(`${clockTimeOf(entry.at)} ${`#${entry.seq}`.padStart(5)} ${subject.padEnd(11)} ${says}`);
  }
  const last = script.steps.at(-1);
  say(`\n${figuresText(file.value, last ? momentOf(script, last) : script.start)}\n`);
  for (const caution of CAUTIONS) say(caution);
  return DONE;
}
