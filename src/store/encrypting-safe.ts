/** The safe of a folder that is encrypted: whoever has its passphrase has the safe, and nobody else. */
import { randomBytes } from "node:crypto";
import { type Envelope, enveloped, envelopeIn, unfolded } from "./envelope.ts";
import { damage, refusal } from "./fault-words.ts";
import { COST, type KeyMaking, keyFrom, SALT_BYTES } from "./passphrase-key.ts";
import { isEncrypted, type Safe } from "./safe.ts";

/** Files may have come together from so many folders: each takes a key of its own, and each key its time. */
const MOST_KEYS = 16;

/** A safe for a passphrase that has just been chosen. Rejects where the computer can't make a key. */
export function newSafe(passphrase: string): Promise<Safe> {
  const keys = keyring(passphrase);
  return safeOf(keys, { ...COST, salt: randomBytes(SALT_BYTES).toString("base64") });
}

/** The safe whose envelope the passphrase opens; `null` where it is another's. Rejects where the computer can't make a key. */
export async function safeFitting(passphrase: string, keyhole: Envelope): Promise<Safe | null> {
  const keys = keyring(passphrase);
  const key = await keys(keyhole.making);
  return unfolded(key, keyhole) === null ? null : safeOf(keys, keyhole.making);
}

type Keys = (making: KeyMaking) => Promise<Buffer>;

async function safeOf(keys: Keys, own: KeyMaking): Promise<Safe> {
  const ownKey = await keys(own);
  return {
    encrypts: true,
    put: (parts) => enveloped(ownKey, own, parts),
    async take(kept) {
      if (!isEncrypted(kept)) return kept;
      const envelope = envelopeIn(kept);
      const found = unfolded(await keys(envelope.making), envelope);
      if (found !== null) return found;
      throw envelope.making.salt === own.salt ? damage(CHANGED) : refusal(OTHERS);
    },
  };
}

const CHANGED = "it is encrypted and was damaged or changed, and an encrypted file can't be read in part";
const OTHERS = "it was encrypted with another passphrase than the one given, or is damaged";

/** Keys of one passphrase, each made once; one after the other, for each takes much memory while it is made. */
function keyring(passphrase: string): Keys {
  const made = new Map<string, Promise<Buffer>>();
  let last: Promise<unknown> = Promise.resolve();
  return (making) => {
    const name = JSON.stringify([making.n, making.salt]);
    const known = made.get(name);
    if (known) return known;
    if (made.size >= MOST_KEYS)
      return Promise.reject(
        refusal(`it is from yet another folder: files of ${MOST_KEYS} are opened at once`),
      );
    const key = last.then(() => keyFrom(passphrase, making));
    last = key.catch(() => made.delete(name));
    made.set(name, key);
    return key;
  };
}
