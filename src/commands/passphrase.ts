/** Where a passphrase comes from: the file that was named for it, else the person at the terminal. */
import { open } from "node:fs/promises";
import { type Outcome, refused, taken } from "../format/outcome.ts";
import { readingFaultWords } from "../store/fault-words.ts";
import { passphraseFault } from "../store/passphrase-key.ts";
import { askHidden, canAsk } from "./ask-hidden.ts";
import { complain, DONE } from "./speak.ts";

/** A file and never the passphrase itself: what stands in a call can be seen by others. */
export type PassphraseFile = { readonly passphraseFile?: string | undefined };

/** What a person answered: a passphrase, a sentence why it is none, or `null` when they think better of it. */
type Answer = Outcome<string> | null;

const TRIES = 3;
const MOST_BYTES = 8192;

const NOBODY_TO_ASK =
  "a passphrase is needed, and there is no terminal to ask for it: name a file that holds it, with --passphrase-file or in PUMPSIDE_PASSPHRASE_FILE.";
const NOT_GIVEN = "no passphrase was given, so nothing was done.";
const LAST_TRY = `that was the last of ${TRIES} tries, so nothing was done.`;

/** Whether there is a passphrase to be had. */
export const canBeGiven = (named: PassphraseFile): boolean => fileOf(named) !== undefined || canAsk();

const fileOf = ({ passphraseFile }: PassphraseFile): string | undefined =>
  passphraseFile || process.env.PUMPSIDE_PASSPHRASE_FILE || undefined;

/**
 * What `fits` makes of the passphrase in the file, else of the one that is asked for, up to three times while it does not
 * fit. Never rejects unless `fits` does.
 */
export async function withPassphrase<T>(
  named: PassphraseFile,
  ask: () => Promise<Answer>,
  fits: (passphrase: string) => Promise<Outcome<T>>,
): Promise<Outcome<T>> {
  const file = fileOf(named);
  if (file !== undefined) {
    const read = await firstLineOf(file);
    return read.ok ? await fits(read.value) : read;
  }
  if (!canAsk()) return refused(NOBODY_TO_ASK);
  for (let tries = 1; ; tries++) {
    const answer = await ask();
    if (answer === null) return refused(NOT_GIVEN);
    const fitting = answer.ok ? await fits(answer.value) : answer;
    if (fitting.ok) return fitting;
    complain(fitting.fault, DONE);
    if (tries === TRIES) return refused(LAST_TRY);
  }
}

/** Asks for a passphrase that exists. */
export const askOnce = (question: string) => async (): Promise<Answer> => {
  const typed = await askHidden(question);
  return typed === null ? null : taken(typed);
};

/** Asks for a new passphrase, and for the same again, so that a slip does not lock everybody out. */
export async function askTwice(): Promise<Answer> {
  const typed = await askHidden("New passphrase (it is not shown): ");
  if (typed === null) return null;
  const fault = passphraseFault(typed);
  if (fault !== null) return refused(fault);
  const again = await askHidden("The same once more: ");
  if (again === null) return null;
  return again === typed ? taken(typed) : refused("the two were not the same: type it anew, both times.");
}

/** The first line, without its end; what some editors put before all text is left out. */
async function firstLineOf(path: string): Promise<Outcome<string>> {
  try {
    const file = await open(path);
    try {
      const { buffer, bytesRead } = await file.read(Buffer.alloc(MOST_BYTES), 0, MOST_BYTES);
      const [line = ""] = buffer
        .toString("utf8", 0, bytesRead)
        .replace(/^\uFEFF/, "")
        .split(/\r?\n/);
      return taken(line);
    } finally {
      await file.close();
    }
  } catch (error) {
    return refused(`the file that holds the passphrase can't be read: ${readingFaultWords(error)}.`);
  }
}
