/** From a passphrase to a key: scrypt (RFC 7914), slow on purpose, so that guessing is slow as well. */
import { scrypt } from "node:crypto";
import * as z from "zod";
import { refusal } from "./fault-words.ts";

/** What a key is made from besides the passphrase. It is no secret and stands in the open. */
export type KeyMaking = {
  /** Cost in memory and time, a power of two. */
  readonly n: number;
  /** Size of a block; a key takes 128 · n · r bytes of memory while it is made. */
  readonly r: number;
  /** How often over. */
  readonly p: number;
  /** 16 bytes of chance in base64. */
  readonly salt: string;
};

/** 128 MB and half a second for a key. */
export const COST = { n: 2 ** 17, r: 8, p: 1 } as const;
/** A file from elsewhere may ask for no less, which would be weak, and for not much more, which would be harm. */
const COSTS: readonly number[] = [COST.n, 2 * COST.n];

/** Whether a key is made of what is asked for. */
export const isBearable = ({ n, r, p }: KeyMaking): boolean =>
  COSTS.includes(n) && r === COST.r && p === COST.p;

export const KEY_BYTES = 32;
export const SALT_BYTES = 16;

/** As many bytes as that in base64, in the one way of writing them. */
export const bytesInBase64 = (bytes: number) =>
  z.string().refine((text) => {
    const read = Buffer.from(text, "base64");
    return read.length === bytes && read.toString("base64") === text;
  });

/** The key, 32 bytes. The same words typed on another keyboard give the same key (NFKC). Rejects with a refusal. */
export const keyFrom = (passphrase: string, { n, r, p, salt }: KeyMaking): Promise<Buffer> =>
  new Promise((resolve, reject) => {
    // Node's own bound is 32 MB; what is needed is a little over 128 · n · r.
    const cost = { N: n, r, p, maxmem: 2 * 128 * n * r };
    const words = passphrase.normalize("NFKC");
    scrypt(words, Buffer.from(salt, "base64"), KEY_BYTES, cost, (error, key) =>
      error === null ? resolve(key) : reject(refusal("the computer has no memory left for it")),
    );
  });

/** Characters that a passphrase has at least: four short words, or so. */
export const SHORTEST_PASSPHRASE = 16;
const LONGEST_PASSPHRASE = 1000;

/** What keeps a passphrase from being chosen, in a sentence; `null` for one that can be. */
export function passphraseFault(passphrase: string): string | null {
  const { length } = [...passphrase.normalize("NFKC")];
  if (length > LONGEST_PASSPHRASE) return `a passphrase has no more than ${LONGEST_PASSPHRASE} characters.`;
  return length < SHORTEST_PASSPHRASE
    ? `that is too short: take at least ${SHORTEST_PASSPHRASE} characters, a few words that do not belong together.`
    : null;
}
