/** `pumpside manual`: every verb with its options and its example, and the strokes, as one plain text. */
import type { Command } from "commander";
import { keysText } from "./keys.ts";
import { DONE, say } from "./speak.ts";

const WIDTH = 100;

export async function manualVerb(program: Command): Promise<number> {
  say([...pagesOf(program), `STROKES\n\n${keysText()}\n`].join("\n"));
  return DONE;
}

/** The help of a command and of every command under it, each under its name. */
function pagesOf(command: Command): string[] {
  let page = "";
  command.configureOutput({ writeOut: (text) => (page += text), getOutHelpWidth: () => WIDTH });
  command.configureHelp({ showGlobalOptions: false }).outputHelp();
  return [`${nameOf(command).toUpperCase()}\n\n${page}`, ...command.commands.flatMap(pagesOf)];
}

const nameOf = (command: Command): string =>
  command.parent ? `${nameOf(command.parent)} ${command.name()}` : command.name();
