/** Keys and characters that have no business in a protocol, wherever they stand. */
import type * as z from "zod";
import { type Fault, faultAt, type Path, quoted } from "./fault.ts";
import { nearest } from "./nearest.ts";
import { childOf, knownKeys } from "./schema-walk.ts";

type Schema = z.core.$ZodType | undefined;

/** Keys that would reach into the machinery of the language. */
const FORBIDDEN = ["__proto__", "constructor", "prototype"];

/** Every forbidden key, wherever it stands. */
export function forbiddenKeys(json: unknown, path: Path = []): Fault[] {
  return membersOf(json).flatMap(([key, value]) =>
    FORBIDDEN.includes(String(key))
      ? [faultAt([...path, key], "a protocol may not carry this name", "take it out")]
      : forbiddenKeys(value, [...path, key]),
  );
}

/** Every key the schema does not know, with the one that was probably meant. */
export function unknownKeys(schema: Schema, json: unknown, path: Path = []): Fault[] {
  const known = schema && knownKeys(schema);
  return membersOf(json).flatMap(([key, value]) => {
    const here = [...path, key];
    const inside = childOf(schema, key);
    if (inside) return unknownKeys(inside, value, here);
    return known && typeof key === "string"
      ? [
          unknown(
            key,
            here,
            known.filter((name) => !has(json, name)),
          ),
        ]
      : [];
  });
}

/** Every text with a control character, a terminal escape or a mark that turns the direction of writing. */
export function unsafeTexts(json: unknown, path: Path = []): Fault[] {
  if (typeof json === "string") return isSafe(json) ? [] : [faultAt(path, ...UNSAFE)];
  return membersOf(json).flatMap(([key, value]) => {
    const here = [...path, key];
    const ofKey = typeof key === "number" || isSafe(key) ? [] : [faultAt(here, ...UNSAFE)];
    return [...ofKey, ...unsafeTexts(value, here)];
  });
}

/** Controls, invisible marks of format, line and paragraph separators, halves of characters. */
const UNSHOWABLE = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/u;

const UNSAFE = [
  "the text holds a character that cannot be shown on one line of a screen",
  "type it again with letters, signs and spaces only",
] as const;

function unknown(key: string, path: Path, known: readonly string[]): Fault {
  const near = nearest(key, known);
  const others = known.length > 0 ? `; not yet used here: ${known.join(", ")}` : "";
  return faultAt(
    path,
    `${quoted(key)} is not a name this program knows`,
    near === undefined ? `take it out${others}` : `write "${near}"`,
  );
}

const isSafe = (text: string) => !UNSHOWABLE.test(text);

const has = (json: unknown, name: string) =>
  typeof json === "object" && json !== null && Object.hasOwn(json, name);

function membersOf(json: unknown): [string | number, unknown][] {
  if (Array.isArray(json)) return json.map((value, place) => [place, value]);
  return typeof json === "object" && json !== null ? Object.entries(json) : [];
}
