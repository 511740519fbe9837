/** Ids that follow from a name (UUID version 5, RFC 9562): the same case gives the same ids on every machine. */
import { sha1 } from "./sha1.ts";

/** The space of our own names. */
const SPACE = "5b0c6d4e-3f0a-4c0b-9d57-6f6a8f1f2c31";

/** `2ed6657d-e927-568b-95e1-2665a8aea6a2`; other spaces than ours are for checking against published values. */
export function nameUuid(name: string, space: string = SPACE): string {
  const bytes = sha1([...bytesOfUuid(space), ...utf8(name)]).slice(0, 16);
  bytes[6] = ((bytes[6] as number) & 0x0f) | 0x50;
  bytes[8] = ((bytes[8] as number) & 0x3f) | 0x80;
  const hex = bytes.map((byte) => byte.toString(16).padStart(2, "0")).join("");
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
}

const bytesOfUuid = (uuid: string): number[] =>
  (uuid.replaceAll("-", "").match(/../g) ?? []).map((byte) => Number.parseInt(byte, 16));

const utf8 = (text: string): number[] => [...new TextEncoder().encode(text)];
