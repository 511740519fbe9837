/** Where a passphrase is tried: the marker of an encrypted folder, or an encrypted case of its own. */
import { closeSync, existsSync, openSync, readSync, statSync } from "node:fs";
import { access } from "node:fs/promises";
import { dirname, join } from "node:path";
import { type Outcome, refused, taken } from "../format/outcome.ts";
import { type Envelope, envelopeIn } from "./envelope.ts";
import { readingFaultWords } from "./fault-words.ts";
import { idInName, namesIn } from "./folder.ts";
import { lastGoodOf } from "./last-good.ts";
import { bytesOnDisk, READ_AT_ONCE } from "./read-case-file.ts";
import { BEGINNING_BYTES, isEncrypted } from "./safe.ts";

/** The marker is an envelope like any other, with nothing in it: whoever opens it has the folder's passphrase. */
export const markerOf = (folder: string): string => join(folder, "pumpside.passphrase");

/** Whether a folder is encrypted: then nothing of a case may be written there as it is. Never rejects. */
export const isMarked = (folder: string): Promise<boolean> =>
  access(markerOf(folder)).then(
    () => true,
    () => false,
  );

export type Keyhole =
  /** Nothing here is known to be encrypted. */
  | { readonly is: "none" }
  /** `isMarked`: the folder is encrypted; else only cases in it are. */
  | { readonly is: "found"; readonly envelope: Envelope; readonly isMarked: boolean }
  /** The folder is encrypted, and nothing is left on which a passphrase could be tried. */
  | { readonly is: "damaged"; readonly fault: string };

/**
 * The keyhole of a folder or of a case's file: the folder's marker, else the case, of a folder the newest. The marker
 * alone decides where it can be read. Never rejects.
 */
export async function keyholeAt(path: string): Promise<Keyhole> {
  const isFolder = isFolderAt(path);
  const folder = isFolder ? path : dirname(path);
  const marker = existsSync(markerOf(folder)) ? await envelopeAt(markerOf(folder)) : null;
  if (marker?.ok) return { is: "found", envelope: marker.value, isMarked: true };
  for (const candidate of isFolder ? newestIn(folder) : [path, lastGoodOf(path)]) {
    const found = await envelopeAt(candidate);
    if (found.ok) return { is: "found", envelope: found.value, isMarked: marker !== null };
  }
  return marker === null ? { is: "none" } : { is: "damaged", fault: marker.fault };
}

/** Also a folder that may not be listed: its marker can be read all the same. */
function isFolderAt(path: string): boolean {
  try {
    return statSync(path).isDirectory();
  } catch {
    return false;
  }
}

/** The envelope that a file is, or why it is none, without a full stop. Never rejects. */
async function envelopeAt(path: string): Promise<Outcome<Envelope>> {
  try {
    if (!isEncrypted(beginningOf(path))) return refused("it is not as it was written");
    return taken(envelopeIn((await bytesOnDisk(path)).bytes));
  } catch (error) {
    return refused(readingFaultWords(error));
  }
}

/** The first bytes of a file. Throws the system's error. */
function beginningOf(path: string): Uint8Array {
  const file = openSync(path, READ_AT_ONCE);
  try {
    const bytes = Buffer.alloc(BEGINNING_BYTES);
    return bytes.subarray(0, readSync(file, bytes));
  } finally {
    closeSync(file);
  }
}

/** The newest case of a folder, and its state before: names begin with the day. */
function newestIn(folder: string): string[] {
  const newest = namesIn(folder)
    ?.toSorted()
    .findLast((name) => idInName(name) !== null);
  return newest === undefined ? [] : [join(folder, newest), lastGoodOf(join(folder, newest))];
}
