/** The chain: every entry carries the hash of the one before it, the first that of the head, the seal that of the last. */
import { createHash } from "node:crypto";
import canonicalize from "canonicalize";
import type { CaseFile } from "../record/case.ts";
import type { Entry } from "../record/entry.ts";

/** What an entry carries of the one before it, as far as it has been written. */
export const prevOf = (entry: Entry): unknown => (entry as { prev?: unknown }).prev;

/** SHA-256, in hex, of a value's canonical JSON (RFC 8785) as it would stand in a file. */
export const hashOf = (value: object): string => hashOfText(JSON.stringify(value));

/** The same for JSON text. */
export const hashOfText = (json: string): string =>
  createHash("sha256").update(canonical(json)).digest("hex");

/** The hash of what the case was opened with; the first entry carries it. */
export const headHash = ({
  format,
  version,
  id,
  label,
  protocol,
}: Pick<CaseFile, "format" | "version" | "id" | "label" | "protocol">): string =>
  hashOf({ format, version, id, label, protocol });

// RFC 8785 has no form for half a character (a lone surrogate); the file keeps it, the hash takes U+FFFD for it.
function canonical(json: string): string {
  try {
    return canonicalize(JSON.parse(json)) as string;
  } catch {
    return canonicalize(JSON.parse(json, whole)) as string;
  }
}

function whole(_key: string, value: unknown): unknown {
  if (typeof value === "string") return value.toWellFormed();
  if (typeof value !== "object" || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key.toWellFormed(), inner]));
}
