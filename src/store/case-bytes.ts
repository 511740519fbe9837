/** A case as the bytes of its file: the head, one entry a line, each with the hash of the one before, and the seal. */
import type { CaseFile } from "../record/case.ts";
import type { Entry } from "../record/entry.ts";
import { hashOfText, headHash, prevOf } from "./chain.ts";
import { growingBytes } from "./growing-bytes.ts";
import { sealAsRead, soundEntry, soundHead, wasRead } from "./sound-case.ts";

const tail = (seal: string): Uint8Array => Buffer.from(`\n  ],\n  "seal": ${JSON.stringify(seal)}\n}\n`);

/**
 * Makes the bytes of one case as it grows. Entries are only ever added to, so each is checked and turned into text
 * once; a list that differs from the one before in anything but new entries at its end is made afresh. What is
 * returned holds until the next call. Throws a refusal for a case that could not be read back.
 */
export function caseBytes(): (file: CaseFile) => readonly Uint8Array[] {
  const body = growingBytes();
  let head = { text: "", bytes: Buffer.of() };
  let written: Entry[] = [];
  let hashOfLast = () => "";

  const startOver = (text: string, file: CaseFile) => {
    head = { text, bytes: Buffer.from(text) };
    hashOfLast = () => headHash(file);
    written = [];
    body.clear();
  };

  const add = (entry: Entry, sound: Entry) => {
    // A hash that is missing in a file is never made up later: it would hide that somebody took it away.
    const asItIs = wasRead(entry) || prevOf(entry) !== undefined;
    const text = JSON.stringify(asItIs ? sound : { ...sound, prev: hashOfLast() });
    hashOfLast = sealOf(entry, text);
    body.add(`${written.length === 0 ? "" : ","}\n    ${text}`);
    written.push(entry);
  };

  return (file) => {
    const text = headText(file);
    const differs = (entry: Entry, place: number) => entry !== file.entries[place];
    if (text !== head.text || written.some(differs)) startOver(text, file);
    for (const entry of file.entries.slice(written.length))
      add(entry, soundEntry(file.entries, written.length));
    return [head.bytes, ...body.pieces(), tail(hashOfLast())];
  };
}

/** Where the entries of a file end. */
const END = Buffer.from("\n  ],\n");
const COMMA = ",".charCodeAt(0);

/** Whether these bytes are a case as it is, or as it was before some of its last entries. Throws a refusal as above. */
export function isStateOf(found: Uint8Array, file: CaseFile): boolean {
  const whole = Buffer.concat(caseBytes()(file));
  if (whole.equals(found)) return true;
  const end = Buffer.from(found.buffer, found.byteOffset, found.length).lastIndexOf(END);
  return end > 0 && whole[end] === COMMA && whole.subarray(0, end).equals(found.subarray(0, end));
}

/** The hash of an entry, made once; of the last one of a file that was read, what the file itself said it was. */
function sealOf(entry: Entry, text: string): () => string {
  let seal = sealAsRead(entry);
  return () => {
    seal ??= hashOfText(text);
    return seal;
  };
}

const heads = new WeakMap<object, { file: CaseFile; text: string }>();

// The protocol is the bulk of the head and never changes: its text is made once for all saves of a case.
function headText(file: CaseFile): string {
  const known = heads.get(file.protocol);
  if (known && sameHead(known.file, file)) return known.text;
  const { protocol, ...head } = soundHead(file);
  const protocolLines = membersOf(protocol, "    ").join(",\n");
  const members = [...membersOf(head, "  "), `  "protocol": {\n${protocolLines}\n  }`];
  const text = `{\n${members.join(",\n")},\n  "entries": [`;
  heads.set(file.protocol, { file, text });
  return text;
}

const membersOf = (value: object, indent: string): string[] =>
  Object.entries(value)
    .filter(([, inner]) => inner !== undefined)
    .map(([key, inner]) => `${indent}${JSON.stringify(key)}: ${JSON.stringify(inner)}`);

function sameHead(one: CaseFile, other: CaseFile): boolean {
  const [a, b] = [one as Record<string, unknown>, other as Record<string, unknown>];
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  keys.delete("entries");
  keys.delete("seal");
  return [...keys].every((key) => a[key] === b[key]);
}
