/** The command line: every verb, its arguments and its options. */
import { Command, CommanderError } from "commander";
import { CAUTIONS } from "../format/cautions.ts";
import { checkVerb } from "./check.ts";
import { demoVerb } from "./demo.ts";
import { figuresVerb } from "./figures.ts";
import { keysVerb } from "./keys.ts";
import { listVerb } from "./list.ts";
import { logVerb } from "./log.ts";
import { newVerb } from "./new.ts";
import { complain, DONE, WRONG_CALL } from "./place.ts";
import { protocolCheckVerb } from "./protocol.ts";
import { reviewVerb } from "./review.ts";
import { runVerb } from "./run.ts";

const DIR = [
  "--dir <folder>",
  "where cases are kept (else PUMPSIDE_DIR, else the user's data folder)",
] as const;
const CASE = "a path, a label or an id";

/** Runs the verb that the arguments name and gives its exit code: 0 done, 1 the case has a fault, 2 wrong call. */
export async function runCommandLine(words: readonly string[], version: string): Promise<number> {
  let code = DONE;
  const ending = async (verb: Promise<number>): Promise<void> => {
    code = await verb;
  };
  const program = new Command("pumpside")
    .description("The record of a bypass run, by keyboard alone. Without a verb: the list of cases.")
    .version(version)
    .option(...DIR)
    .option("--protocol <file>", "a unit's protocol for new cases")
    .addHelpText("after", `\n${CAUTIONS.join("\n")}`)
    .exitOverride()
    .configureOutput({ writeErr: () => {} })
    .action((options) => ending(runVerb(undefined, options)));
  const verb = (usage: string, what: string) =>
    program
      .command(usage)
      .description(what)
      .option(...DIR)
      .exitOverride()
      .configureOutput({ writeErr: () => {} });

  verb("new", "makes a case and prints its path")
    .option("--label <label>", "what people call the case (no patient's name)")
    .option("--protocol <file>", "the unit's protocol")
    .option("--by <initials>", "who runs the pump")
    .action((_options, command) => ending(newVerb(command.optsWithGlobals())));
  verb("run", "the console, on a case or on the list of cases")
    .argument("[case]", CASE)
    .action((name, _options, command) => ending(runVerb(name, command.optsWithGlobals())));
  verb("log", 'one stroke from a script, such as: log valve-2 "d 300 r @10:42"')
    .argument("<case>", CASE)
    .argument("<stroke>", "the stroke's key and its line")
    .option("--now <time>", "stands for the clock, in ISO 8601")
    .action((name, stroke, _options, command) => ending(logVerb(name, stroke, command.optsWithGlobals())));
  verb("review", "a case read back; nothing can be changed")
    .argument("<case>", CASE)
    .action((name, _options, command) => ending(reviewVerb(name, command.optsWithGlobals())));
  verb("figures", "what a case says: times, balances, doses, each with its working")
    .argument("<case>", CASE)
    .option("--json", "as data")
    .option("--at <time>", "at a moment, in ISO 8601")
    .action((name, _options, command) => ending(figuresVerb(name, command.optsWithGlobals())));
  verb("list", "the cases, newest first")
    .option("--json", "as data")
    .action((_options, command) => ending(listVerb(command.optsWithGlobals())));
  verb("check", "whether a case is valid and whole")
    .argument("<case>", CASE)
    .action((name, _options, command) => ending(checkVerb(name, command.optsWithGlobals())));
  verb("demo", "plays an invented case in the console")
    .option("--speed <factor>", "how many times faster than life", "60")
    .action((_options, command) => ending(demoVerb(command.optsWithGlobals())));
  verb("keys", "the strokes")
    .option("--json", "as data")
    .option("--markdown", "as the table of the README")
    .action((_options, command) => ending(keysVerb(command.optsWithGlobals())));
  program
    .command("protocol")
    .description("a unit's protocol file")
    .command("check")
    .description("lists every fault of a protocol file")
    .argument("<file>")
    .exitOverride()
    .configureOutput({ writeErr: () => {} })
    .action((path) => ending(protocolCheckVerb(path)));

  try {
    await program.parseAsync([...words], { from: "user" });
    return code;
  } catch (error) {
    return wrongCall(error);
  }
}

/** Help and version end well; any other word of the parser is a wrong call, said in one sentence. */
function wrongCall(error: unknown): number {
  if (!(error instanceof CommanderError)) throw error;
  if (error.exitCode === 0) return DONE;
  return complain(`${error.message.replace(/^error: /, "")}; pumpside --help lists the verbs.`, WRONG_CALL);
}
