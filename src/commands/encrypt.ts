/** `pumpside encrypt`: from now on nobody reads the cases of a folder without its passphrase. */
import { type Outcome, refused, taken } from "../format/outcome.ts";
import { newSafe } from "../store/encrypting-safe.ts";
import { faultWords } from "../store/fault-words.ts";
import { openFolder } from "../store/folder.ts";
import { encryptFolder } from "../store/folder-encryption.ts";
import { passphraseFault, SHORTEST_PASSPHRASE } from "../store/passphrase-key.ts";
import type { Safe } from "../store/safe.ts";
import { askTwice, type PassphraseFile, withPassphrase } from "./passphrase.ts";
import { folderOf, type Place } from "./place.ts";
import { rewriting } from "./rewriting.ts";
import { CASE_FAULT, complain, DONE, say, WRONG_CALL } from "./speak.ts";
import { type Found, safeAt } from "./unlock.ts";

const explained = (folder: string): string => `This encrypts every case in ${folder}
and every case that is made there from now on.

Without the passphrase nobody can read the cases again, and that includes those
who made this program. There is no way round it, and no way back in once it is
lost. Keep it where your department keeps such things, so that it does not hang
on one person's memory.

Not covered: second copies and backups that were made before, reports and
exports, and what a disk still holds of files that have been replaced. The day
of a case stays in the name of its file.

A passphrase has at least ${SHORTEST_PASSPHRASE} characters: take a few words that do not belong
together. pumpside decrypt, with the passphrase, is the way back.
`;

export async function encryptVerb(options: Place): Promise<number> {
  const folder = await openFolder(folderOf(options));
  if (!folder.ok) return complain(folder.fault, CASE_FAULT);
  const known = await safeAt(folder.value, options);
  if (!known.ok) return known.code;
  if (!known.value.encrypts) say(explained(folder.value));
  const safe = known.value.encrypts ? known : await chosen(options);
  if (!safe.ok) return safe.code;
  const done = await rewriting("encrypting cases", (watching) =>
    encryptFolder(folder.value, safe.value, watching),
  );
  if (done !== DONE) return done;
  say("Every case of this folder is encrypted, and so is every new one.");
  return DONE;
}

/** The safe of a passphrase that has just been chosen. */
async function chosen(named: PassphraseFile): Promise<Found<Safe>> {
  const safe = await withPassphrase(named, askTwice, madeFor);
  return safe.ok ? safe : { ok: false, code: complain(safe.fault, WRONG_CALL) };
}

async function madeFor(passphrase: string): Promise<Outcome<Safe>> {
  const fault = passphraseFault(passphrase);
  if (fault !== null) return refused(fault);
  try {
    return taken(await newSafe(passphrase));
  } catch (error) {
    return refused(`a key can't be made: ${faultWords(error)}.`);
  }
}
