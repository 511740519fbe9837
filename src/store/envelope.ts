/**
 * An encrypted file: one line of JSON that says how it was made, the encrypted bytes, and a tag of 16 bytes. The line,
 * as it stands, is authenticated with the rest (AES-256-GCM, NIST SP 800-38D): no bit of the file can be changed unseen.
 */
import { createCipheriv, createDecipheriv, randomBytes } from "node:crypto";
import * as z from "zod";
import { damage, refusal } from "./fault-words.ts";
import { bytesInBase64, isBearable, type KeyMaking, SALT_BYTES } from "./passphrase-key.ts";
import { ENVELOPE_FORMAT } from "./safe.ts";

const VERSION = 1;
const CIPHER = "aes-256-gcm";
const IV_BYTES = 12;
const TAG_BYTES = 16;
/** Where the first line ends at the latest; it is a good deal shorter. */
const LONGEST_HEAD = 1000;

const headSchema = z.strictObject({
  format: z.literal(ENVELOPE_FORMAT),
  version: z.literal(VERSION),
  kdf: z.literal("scrypt"),
  n: z.int(),
  r: z.int(),
  p: z.int(),
  salt: bytesInBase64(SALT_BYTES),
  cipher: z.literal(CIPHER),
  iv: bytesInBase64(IV_BYTES),
});

type Head = z.infer<typeof headSchema>;

export type Envelope = {
  readonly making: KeyMaking;
  readonly iv: Buffer;
  /** The first line with its end, as it lies on the disk. */
  readonly head: Uint8Array;
  readonly body: Uint8Array;
  readonly tag: Uint8Array;
};

/** The envelope that encrypted bytes are. Throws a refusal, or damage where it can't have been written so. */
export function envelopeIn(bytes: Uint8Array): Envelope {
  const end = bytes.subarray(0, LONGEST_HEAD).indexOf(0x0a) + 1;
  const head = bytes.subarray(0, end);
  const { n, r, p, salt, iv } = headIn(Buffer.from(head).toString("utf8"));
  const making = { n, r, p, salt };
  if (!isBearable(making))
    throw refusal("it asks for another way to make a key than this program takes (scrypt's n, r and p)");
  if (bytes.length < end + TAG_BYTES) throw damage(CUT);
  return {
    making,
    iv: Buffer.from(iv, "base64"),
    head,
    body: bytes.subarray(end, -TAG_BYTES),
    tag: bytes.subarray(-TAG_BYTES),
  };
}

const CUT = "it is encrypted and damaged, and an encrypted file can't be read in part";

function headIn(line: string): Head {
  const json = parsed(line);
  if (typeof json?.version === "number" && json.version > VERSION)
    throw refusal("it was encrypted by a newer version of this program");
  const read = headSchema.safeParse(json);
  if (!read.success) throw damage(CUT);
  return read.data;
}

function parsed(line: string): { version?: unknown } | null {
  try {
    return JSON.parse(line);
  } catch {
    return null;
  }
}

/** Encrypts `parts`, with chance of its own each time: the same case twice gives two files that have nothing in common. */
export function enveloped(key: Buffer, making: KeyMaking, parts: readonly Uint8Array[]): Uint8Array[] {
  const iv = randomBytes(IV_BYTES);
  const { n, r, p, salt } = making;
  const facts: Head = {
    format: ENVELOPE_FORMAT,
    version: VERSION,
    kdf: "scrypt",
    n,
    r,
    p,
    salt,
    cipher: CIPHER,
    iv: iv.toString("base64"),
  };
  const head = Buffer.from(`${JSON.stringify(facts)}\n`);
  const cipher = createCipheriv(CIPHER, key, iv).setAAD(head);
  const body = parts.map((part) => cipher.update(part));
  return [head, ...body, cipher.final(), cipher.getAuthTag()];
}

/** What is in an envelope; `null` where it was made with another key or has been changed. */
export function unfolded(key: Buffer, { iv, head, body, tag }: Envelope): Uint8Array | null {
  const decipher = createDecipheriv(CIPHER, key, iv, { authTagLength: TAG_BYTES })
    .setAAD(head)
    .setAuthTag(tag);
  const bytes = decipher.update(body);
  try {
    return Buffer.concat([bytes, decipher.final()]);
  } catch {
    return null;
  }
}
