/** The safe that a verb reads and writes cases by: for a folder that is encrypted, once its passphrase has been given. */
import { type Outcome, refused, taken } from "../format/outcome.ts";
import type { Envelope } from "../store/envelope.ts";
import { faultWords } from "../store/fault-words.ts";
import { keyholeAt } from "../store/keyhole.ts";
import { plain, type Safe } from "../store/safe.ts";
import type { PassphraseFile } from "./passphrase.ts";
import { complain, WRONG_CALL } from "./speak.ts";

/** What was asked for, or the code to end with: the complaint has been made. */
export type Found<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly code: number };

const QUESTION = "Passphrase of this folder (it is not shown): ";
const QUESTION_UNMARKED = "Passphrase of the encrypted cases here (Enter alone goes on without): ";
const WRONG = "that is not the passphrase of this folder.";

/**
 * The safe of a folder, or of the folder that a case's file is in. The passphrase is asked for only where something is
 * encrypted. A folder without the marker can hold encrypted cases as well, which came from elsewhere: then it goes on
 * without them, if need be.
 */
export async function safeAt(path: string, named: PassphraseFile): Promise<Found<Safe>> {
  const keyhole = await keyholeAt(path);
  if (keyhole.is === "none") return { ok: true, value: plain };
  if (keyhole.is === "damaged") return { ok: false, code: complain(damagedWords(keyhole.fault), WRONG_CALL) };
  const { envelope, isMarked } = keyhole;
  const { askOnce, canBeGiven, withPassphrase } = await import("./passphrase.ts");
  if (!isMarked && !canBeGiven(named)) return { ok: true, value: plain };
  const safe = await withPassphrase(
    named,
    askOnce(isMarked ? QUESTION : QUESTION_UNMARKED),
    async (passphrase) =>
      passphrase === "" && !isMarked ? taken(plain) : await opened(passphrase, envelope),
  );
  return safe.ok ? safe : { ok: false, code: complain(safe.fault, WRONG_CALL) };
}

/** The safe that a passphrase opens, or a sentence why it does not. Never rejects. */
export async function opened(passphrase: string, envelope: Envelope): Promise<Outcome<Safe>> {
  try {
    const { safeFitting } = await import("../store/encrypting-safe.ts");
    const safe = await safeFitting(passphrase, envelope);
    return safe === null ? refused(WRONG) : taken(safe);
  } catch (error) {
    return refused(`the passphrase can't be tried: ${faultWords(error)}.`);
  }
}

const damagedWords = (fault: string): string =>
  `the file pumpside.passphrase of this folder can't be used (${fault}): put it back from a copy of the folder.`;
