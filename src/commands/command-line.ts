/** Running the command line: the verb that the words name, and the code it ends with. */
import { type Command, CommanderError } from "commander";
import { commandTable } from "./command-table.ts";
import { complain, DONE, WRONG_CALL } from "./speak.ts";
import { wrongCallSentence } from "./wrong-call.ts";

/**
 * Runs the verb that the arguments name and gives its exit code: 0 done, 1 the case has a fault, 2 wrong call. Help and
 * version end well; any other word of the parser is a wrong call.
 */
export async function runCommandLine(words: readonly string[], version: string): Promise<number> {
  let code = DONE;
  const ending = async (verb: Promise<number>) => {
    code = await verb;
  };
  try {
    await commandTable(version, ending, words).parseAsync([...words], { from: "user" });
    return code;
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
  }
  return await saidOf(words, commandTable(version, ending));
}

/** What the whole table says of words that name no verb to run. */
async function saidOf(words: readonly string[], program: Command): Promise<number> {
  try {
    await program.parseAsync([...words], { from: "user" });
    return DONE;
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    return error.exitCode === 0 ? DONE : complain(wrongCallSentence(program, words, error), WRONG_CALL);
  }
}
