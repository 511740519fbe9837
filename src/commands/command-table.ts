/** The table of the command line: every verb with its arguments, its options and an example; each is loaded when it runs. */
import { Command, Option } from "commander";
import { CAUTIONS } from "../format/cautions.ts";
import { AUDIT_FORMATS, CSV_TABLES, EXPORTS, FORMATS, SORTS } from "../reports/formats.ts";
import { setUpTerminal } from "./terminal.ts";

const DIR = [
  "--dir <folder>",
  "where cases are kept (else PUMPSIDE_DIR, else the user's data folder)",
] as const;
const CASE = "a path, a label or an id";
const MOMENT = "in ISO 8601, such as 2026-03-04T10:42:30+01:00";

/** Takes the exit code of the verb that ran. */
export type Ending = (verb: Promise<number>) => Promise<void>;

/** Makes a verb, with what it does and an example. */
type Maker = (what: string, example: string) => Command;

/** None of their code is evaluated before one is run. `whole` is the table with all of them. */
const VERBS: Readonly<Record<string, (verb: Maker, ending: Ending, whole: () => Command) => void>> = {
  new: (verb, ending) =>
    verb("makes a case and prints its path", "new --label valve-2 --by KM")
      .option("--label <label>", "what people call the case (no patient's name)")
      .option("--protocol <file>", "the unit's protocol")
      .option("--by <initials>", "who runs the pump")
      .action(async (_options, command) =>
        ending((await import("./new.ts")).newVerb(command.optsWithGlobals())),
      ),
  run: (verb, ending) =>
    verb("the console, on a case or on the list of cases", "run valve-2")
      .argument("[case]", CASE)
      .option("--bell", "rings the terminal's bell once for each thing that becomes due")
      .action(async (name, _options, command) =>
        ending((await import("./run.ts")).runVerb(name, command.optsWithGlobals())),
      ),
  log: (verb, ending) =>
    verb("writes one stroke from a script", 'log valve-2 "d 300 r @10:42"')
      .argument("<case>", CASE)
      .argument("<stroke>", "the stroke's key and its line")
      .option("--now <time>", `stands for the clock, ${MOMENT}`)
      .action(async (name, stroke, _options, command) =>
        ending((await import("./log.ts")).logVerb(name, stroke, command.optsWithGlobals())),
      ),
  review: (verb, ending) =>
    verb("a case read back; nothing can be changed", "review sample-cases")
      .argument("<case>", `${CASE}, or a folder of cases`)
      .action(async (name, _options, command) =>
        ending((await import("./review.ts")).reviewVerb(name, command.optsWithGlobals())),
      ),
  figures: (verb, ending) =>
    verb(
      "what a case says: times, balances, doses, each with its working",
      "figures valve-2 --json --at 2026-03-04T10:42:30+01:00",
    )
      .argument("<case>", CASE)
      .option("--json", "as data")
      .option("--at <time>", `at a moment, ${MOMENT}`)
      .action(async (name, _options, command) =>
        ending((await import("./figures.ts")).figuresVerb(name, command.optsWithGlobals())),
      ),
  report: (verb, ending) =>
    verb("a case as it is handed on", "report valve-2 --as html --out valve-2.html")
      .argument("<case>", CASE)
      .addOption(new Option("--as <format>", "how").choices(FORMATS).makeOptionMandatory())
      .option("--out <file>", "writes a file, for csv without --table a folder (else standard output)")
      .option("--force", "replaces a file that is there already")
      .addOption(new Option("--table <name>", "one table of csv").choices(CSV_TABLES))
      .option("--without-names", "leaves out who it was: patient, people, and what was written freely")
      .option("--keep-notes", "keeps notes, incidents and reasons where names are left out")
      .option("--pages", "parts text into pages for a printer")
      .option("--at <time>", `as the case stood at a moment, ${MOMENT}`)
      .action(async (name, _options, command) =>
        ending((await import("./report.ts")).reportVerb(name, command.optsWithGlobals())),
      ),
  list: (verb, ending) =>
    verb("the cases, newest first", 'list --state closed --since 2026-01-01 --operation "valve"')
      .addOption(new Option("--state <state>", "only cases in this state").choices(["open", "closed"]))
      .option("--since <day>", "only from this day on, such as 2026-03-04")
      .option("--until <day>", "only up to this day")
      .option("--operation <text>", "only where the operation has this in it")
      .option("--label <text>", "only where the label has this in it")
      .addOption(new Option("--sort <by>", "the order").choices(SORTS).default("date"))
      .option("--reverse", "the other way round")
      .option("--json", "as data, with every figure")
      .action(async (_options, command) =>
        ending((await import("./list.ts")).listVerb(command.optsWithGlobals())),
      ),
  audit: (verb, ending) =>
    verb(
      "a department's figures over a folder of cases",
      "audit --since 2026-01-01 --as html --out audit.html",
    )
      .argument("[folder]", "a folder of cases (else where cases are kept)")
      .addOption(new Option("--as <format>", "how").choices(AUDIT_FORMATS).default("text"))
      .option("--since <day>", "only cases from this day on, such as 2026-03-04")
      .option("--until <day>", "only cases up to this day")
      .option("--operation <text>", "only where the operation has this in it")
      .option("--out <file>", "writes a file (else standard output)")
      .option("--force", "replaces a file that is there already")
      .action(async (folder, _options, command) =>
        ending((await import("./audit.ts")).auditVerb(folder, command.optsWithGlobals())),
      ),
  export: (verb, ending) =>
    verb(
      "many cases for an analytical engine, a line an entry or a figure",
      "export --as ndjson --what figures --out figures.ndjson",
    )
      .argument("[folder]", "a folder of cases (else where cases are kept)")
      .addOption(new Option("--as <format>", "how").choices(["ndjson"]).default("ndjson"))
      .addOption(new Option("--what <lines>", "lines of what").choices(EXPORTS).default("entries"))
      .option("--without-names", "leaves out who it was: patient, people, and what was written freely")
      .option("--out <file>", "writes a file (else standard output)")
      .option("--force", "replaces a file that is there already")
      .action(async (folder, _options, command) =>
        ending((await import("./export.ts")).exportVerb(folder, command.optsWithGlobals())),
      ),
  check: (verb, ending) =>
    verb("whether a case is valid and whole", "check valve-2")
      .argument("<case>", CASE)
      .action(async (name, _options, command) =>
        ending((await import("./check.ts")).checkVerb(name, command.optsWithGlobals())),
      ),
  encrypt: (verb, ending) =>
    verb(
      "encrypts the folder of cases; without its passphrase nobody can read them again",
      "encrypt --dir /media/cases",
    ).action(async (_options, command) =>
      ending((await import("./encrypt.ts")).encryptVerb(command.optsWithGlobals())),
    ),
  decrypt: (verb, ending) =>
    verb(
      "takes the encryption off the folder of cases, with its passphrase",
      "decrypt --dir /media/cases",
    ).action(async (_options, command) =>
      ending((await import("./decrypt.ts")).decryptVerb(command.optsWithGlobals())),
    ),
  demo: (verb, ending) =>
    verb("plays an invented case in the console", "demo --speed 120")
      .option("--speed <factor>", "how many times faster than life (else 60, typed along 1)")
      .option("--typed", "says the orders for you to type, and what came of it at the end")
      .action(async (_options, command) =>
        ending((await import("./demo.ts")).demoVerb(command.optsWithGlobals())),
      ),
  keys: (verb, ending) =>
    verb("the strokes", "keys --json")
      .option("--json", "as data")
      .option("--markdown", "as the table of the README")
      .action(async (_options, command) =>
        ending((await import("./keys.ts")).keysVerb(command.optsWithGlobals())),
      ),
  protocol: (verb, ending) => {
    const protocol = verb("works on a unit's protocol file", "protocol check our-unit.json");
    protocol
      .command("check")
      .description("lists every fault of a protocol file")
      .addHelpText("after", exampleText("protocol check our-unit.json"))
      .argument("<file>", "the protocol file")
      .action(async (path) => ending((await import("./protocol.ts")).protocolCheckVerb(path)));
    protocol
      .command("show")
      .description("prints a shipped protocol, to begin a unit's own from")
      .addHelpText("after", exampleText("protocol show adult > our-unit.json"))
      .argument("<name>", "adult or paediatric")
      .action(async (name) => ending((await import("./protocol.ts")).protocolShowVerb(name)));
    protocol
      .command("settings")
      .description("says what every setting of a protocol file means")
      .addHelpText("after", exampleText("protocol settings"))
      .action(async () => ending((await import("./protocol.ts")).protocolSettingsVerb()));
  },
  schema: (verb, ending) =>
    verb("describes the case file as JSON Schema, for other tools", "schema > case.schema.json").action(
      async () => ending((await import("./schema.ts")).schemaVerb()),
    ),
  completion: (verb, ending, whole) =>
    verb("prints what makes a shell complete verbs and options", "completion bash > pumpside.bash")
      .argument("<shell>", "bash, zsh or powershell")
      .action(async (shell) => ending((await import("./completion.ts")).completionVerb(shell, whole()))),
  manual: (verb, ending, whole) =>
    verb("prints every verb with its options, and the strokes", "manual > MANUAL.txt").action(async () =>
      ending((await import("./manual.ts")).manualVerb(whole())),
    ),
};

/**
 * The program with all its verbs, or with `named` ones alone: to make all of them takes longer than many a verb to run.
 * Such a part of it prints nothing about calls: whatever it cannot run is for the whole.
 */
export function commandTable(version: string, ending: Ending, named?: readonly string[]): Command {
  // The parser throws what it would have printed, so that it is said in one sentence and with our own exit code.
  const program = new Command("pumpside")
    .exitOverride()
    .configureOutput({ writeErr: silent, ...(named && { writeOut: silent }) })
    .description("The record of a bypass run, by keyboard alone. Without a verb: the list of cases.")
    .version(version)
    .helpCommand("help [verb]", "what a verb does and takes")
    .option(...DIR)
    .option("--copy-to <folder>", "where a second copy goes after each save (else PUMPSIDE_COPY_DIR)")
    .option("--protocol <file>", "a unit's protocol for new cases")
    .option(
      "--passphrase-file <file>",
      "holds the passphrase of encrypted cases (else PUMPSIDE_PASSPHRASE_FILE, else it is asked for)",
    )
    .option("--ascii", "draw with plain ASCII signs, for old terminals")
    .addOption(new Option("--no-ascii", "draw with all signs, whatever the terminal says of itself"))
    .option("--screen-reader", "plain sentences in reading order, for a screen reader")
    .configureHelp({ showGlobalOptions: true })
    .addHelpText("after", exampleText("--dir /media/cases"))
    .addHelpText("after", `\n${CAUTIONS.join("\n")}`)
    .hook("preAction", (_program, command) => setUpTerminal(command.optsWithGlobals()))
    .action(async (options) => ending((await import("./run.ts")).runVerb(undefined, options)));
  for (const [name, define] of Object.entries(VERBS)) {
    if (named && !named.includes(name)) continue;
    const verb: Maker = (what, example) =>
      program.command(name).description(what).addHelpText("after", exampleText(example));
    define(verb, ending, () => commandTable(version, ending));
  }
  return program;
}

const silent = (): void => {};

const exampleText = (example: string): string => `\nExample:\n  pumpside ${example}`;
