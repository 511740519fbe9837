/** What is said of a call that no verb takes: the parser's complaint in one sentence, with what to do instead. */
import type { Command, CommanderError } from "commander";
import { listed } from "../format/text.ts";
import { nearest } from "../protocol/nearest.ts";

const HELP_LISTS = "pumpside --help lists the verbs.";
/** The parser's own words where a verb is not known, or gets more than it takes. */
const TOO_MANY =
  /^too many arguments(?: for '(?<verb>.*)')?\. Expected (?<most>\d+) .* got (?<got>\d+): (?<all>.*)$/s;
const UNKNOWN = /^unknown command '(?<word>.*?)'/s;

/** A sentence about what the parser found wrong with `words`. */
export function wrongCallSentence(
  program: Command,
  words: readonly string[],
  { code, message }: CommanderError,
): string {
  const said = message.replace(/^error: /, "").replace(/\.$/, "");
  const tooMany = TOO_MANY.exec(said)?.groups;
  if (tooMany?.verb !== undefined) return tooManyWords(tooMany.verb, Number(tooMany.most), tooMany.got);
  if (tooMany) return noSuchVerb(tooMany.all?.split(", ")[0] ?? "", program);
  const group = program.commands.find((one) => one.name() === words[0]);
  if (group && (code === "commander.help" || UNKNOWN.test(said)))
    return `${group.name()} takes ${listed(namesOf(group), "or")}: pumpside ${group.name()} --help says what they do.`;
  return code === "commander.help" ? noSuchVerb(words.at(-1) ?? "", program) : `${said}; ${HELP_LISTS}`;
}

/** Most likely a stroke or a label that was not put in quotes. */
const tooManyWords = (verb: string, most: number, got = ""): string =>
  most === 0
    ? `${verb} takes options alone: pumpside ${verb} --help lists them.`
    : `${verb} takes ${most} ${most === 1 ? "word" : "words"}, not ${got}: put what belongs together in quotes.`;

/** Most likely a slip, or a case without the verb that opens it. */
function noSuchVerb(word: string, program: Command): string {
  const near = nearest(word, namesOf(program));
  const instead = near === undefined ? `pumpside run "${word}" opens a case` : `did you mean ${near}`;
  return `there is no verb "${word}": ${instead}; ${HELP_LISTS}`;
}

const namesOf = ({ commands }: Command): string[] => commands.map((one) => one.name());
