/** Checks the text of a protocol file and lists every fault with its place and a suggestion. */
import { contradictions } from "./contradictions.ts";
import { type Fault, quoted } from "./fault.ts";
import { readJsonText } from "./json-text.ts";
import { faultsOfSchema } from "./plain-issues.ts";
import { PROTOCOL_FORMAT, PROTOCOL_VERSION, type Protocol } from "./protocol.ts";
import { protocolSchema } from "./protocol-schema.ts";
import { forbiddenKeys, unknownKeys, unsafeTexts } from "./strange-keys.ts";
import { warningsAbout } from "./warnings.ts";

/** Characters of the longest file that is read at all. */
export const LONGEST = 1_000_000;

export type Checked =
  | { ok: true; value: Protocol; warnings: readonly Fault[] }
  | { ok: false; faults: readonly Fault[] };

/**
 * Reads a protocol from JSON text. Pure; never throws. Every fault comes back with its place and what to do; a valid
 * protocol comes with warnings, which keep nobody from using it.
 */
export function checkProtocolText(text: string): Checked {
  if (text.length > LONGEST) return refused(`the file is larger than ${LONGEST / 1_000_000} MB`, COPY);
  if (text.trim() === "") return refused("the file is empty", COPY);
  const read = readJsonText(text.replace(BYTE_ORDER_MARK, ""));
  if (!read.ok) return { ok: false, faults: [read.fault] };
  const foreign = foreignFault(read.value);
  if (foreign) return foreign;
  const unreadable = [...read.faults, ...forbiddenKeys(read.value)];
  const faults = unreadable.length > 0 ? unreadable : faultsIn(read.value);
  return faults.length > 0
    ? { ok: false, faults }
    : { ok: true, value: protocolSchema.parse(read.value), warnings: warningsAbout(read.value) };
}

const BYTE_ORDER_MARK = /^\ufeff/;
const COPY = "start from a copy of a shipped protocol";

const refused = (says: string, suggestion: string): Checked => ({
  ok: false,
  faults: [{ place: "", says, suggestion }],
});

function foreignFault(json: unknown): Checked | null {
  if (typeof json !== "object" || json === null || Array.isArray(json)) {
    return refused("the file is JSON but not a protocol", COPY);
  }
  const { format, version } = json as { format?: unknown; version?: unknown };
  if (format !== PROTOCOL_FORMAT) {
    const says =
      format === undefined ? 'the file has no "format"' : `the file calls itself ${quoted(format)}`;
    return refused(
      `${says}, so it is not a protocol of ours`,
      `write "format": "${PROTOCOL_FORMAT}" if it is one`,
    );
  }
  if (typeof version === "number" && version > PROTOCOL_VERSION) {
    const says = `the protocol has file version ${version}, and this program reads up to ${PROTOCOL_VERSION}`;
    return refused(says, "open it with the newer program it was made for");
  }
  return null;
}

const faultsIn = (json: unknown): Fault[] => [
  ...faultsOfSchema(protocolSchema, json),
  ...unknownKeys(protocolSchema, json),
  ...contradictions(json),
  ...unsafeTexts(json),
];
