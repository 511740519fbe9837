/** A safe: how what is kept of cases lies on the disk, as it is or encrypted. */
import { refusal } from "./fault-words.ts";

export type Safe = {
  /** Whether what is put in can be read by nobody who lacks the passphrase. */
  readonly encrypts: boolean;
  /** What of these bytes lies on the disk, in parts one after the other; they hold until the next call. */
  readonly put: (parts: readonly Uint8Array[]) => readonly Uint8Array[];
  /** The bytes that were put in; what was never encrypted comes out as it is. Rejects with a refusal. */
  readonly take: (kept: Uint8Array) => Promise<Uint8Array>;
};

/** The word by which an encrypted file is known, whatever its name is. */
export const ENVELOPE_FORMAT = "pumpside-encrypted";
const BEGINNING = Buffer.from(`{"format":"${ENVELOPE_FORMAT}",`);

/** So many bytes tell whether a file is encrypted. */
export const BEGINNING_BYTES = BEGINNING.length;

/** Whether these bytes are encrypted, by their beginning. */
export const isEncrypted = (bytes: Uint8Array): boolean =>
  BEGINNING.equals(bytes.subarray(0, BEGINNING.length));

/** More than a file grows by when it is encrypted. */
export const ENVELOPE_BYTES = 1024;

/** The safe of everybody who has not chosen a passphrase: all lies there as it is. */
export const plain: Safe = {
  encrypts: false,
  put: (parts) => parts,
  async take(kept) {
    if (isEncrypted(kept)) throw refusal("it is encrypted, and no passphrase was given for it");
    return kept;
  },
};
