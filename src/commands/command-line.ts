/** Running the command line: the verb that the words name, and the code it ends with. */
import { type Command, CommanderError } from "commander";
import { commandTable } from "./command-table.ts";
import { complain, DONE, WRONG_CALL } from "./speak.ts";

/** Runs the verb that the arguments name and gives its exit code: 0 done, 1 the case has a fault, 2 wrong call. */
export async function runCommandLine(words: readonly string[], version: string): Promise<number> {
  let code = DONE;
  const program: Command = commandTable(version, async (verb) => {
    code = await verb;
  });
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
  return complain(`${parserWords(error)}; pumpside --help lists the verbs.`, WRONG_CALL);
}

/** The parser takes a verb that it does not know for an argument too many, and a verb left out for a call for help. */
function parserWords({ code, message }: CommanderError): string {
  const words = message.replace(/^error: /, "").replace(/\.$/, "");
  if (code === "commander.help") return "a word is missing after that verb";
  const unknown = /^too many arguments\. .* got \d+: ([^,]*)/.exec(words);
  return unknown ? `"${unknown[1]}" is no verb` : words;
}
