/** From text to JSON, with the line of the first slip: a protocol is written by hand, in a plain editor. */
import type { Fault } from "./fault.ts";
import { scanJson } from "./json-scan.ts";

type JsonText = { ok: true; value: unknown; faults: readonly Fault[] } | { ok: false; fault: Fault };

/**
 * Reads JSON text. Never throws. A slip of writing comes back with its line and column; a name that stands twice in
 * one object, of which JSON would silently keep the last, comes back among `faults`.
 */
export function readJsonText(text: string): JsonText {
  const scanned = scanJson(text);
  if ("faults" in scanned) return { ok: true, value: JSON.parse(text), faults: scanned.faults };
  const { at, says, suggestion } = scanned.slip;
  return { ok: false, fault: { place: lineAndColumn(text, at), says, suggestion } };
}

function lineAndColumn(text: string, at: number): string {
  const before = text.slice(0, at);
  return `line ${before.split("\n").length}, column ${at - before.lastIndexOf("\n")}`;
}
