/** What a case file from elsewhere may not be: so deep, or so made, that reading it could harm. */

/** Brackets within brackets; a case of ours has eight. */
const DEEPEST = 64;

/** Names that reach behind an object. No case of ours has them, and none may bring them. */
const FORBIDDEN_KEYS = new Set(["__proto__", "constructor", "prototype"]);

/** Signs of a text that can nest as deep as it likes without harm to who parses it. */
const SHORT = 1_000_000;

/** What a JSON text gives; `undefined` where its brackets lie too deep. Throws what `JSON.parse` throws. */
export function parsedShallow(text: string): unknown {
  if (text.length > SHORT && isTooDeep(text)) return undefined;
  const json: unknown = JSON.parse(text);
  return isDeeper(json, DEEPEST) ? undefined : json;
}

const isDeeper = (json: unknown, than: number): boolean =>
  typeof json === "object" &&
  json !== null &&
  (than === 0 || Object.values(json).some((inner) => isDeeper(inner, than - 1)));

/** Whether the brackets of a JSON text lie too deep, told without parsing it. */
export function isTooDeep(json: string): boolean {
  let depth = 0;
  let inText = false;
  for (let at = 0; at < json.length; at++) {
    const code = json.charCodeAt(at);
    if (inText) {
      if (code === BACKSLASH) at += 1;
      else if (code === QUOTE) inText = false;
    } else if (code === QUOTE) inText = true;
    else if (code === OPEN_LIST || code === OPEN_OBJECT) depth += 1;
    else if (code === CLOSE_LIST || code === CLOSE_OBJECT) depth -= 1;
    if (depth > DEEPEST) return true;
  }
  return false;
}

const [QUOTE, BACKSLASH, OPEN_LIST, CLOSE_LIST, OPEN_OBJECT, CLOSE_OBJECT] = [34, 92, 91, 93, 123, 125];

/**
 * A forbidden name anywhere in what a JSON text gave (not deeper than `parsedShallow` allows); `null` where there is none. A
 * text that neither spells nor escapes one is not looked through.
 */
export const forbiddenKeyIn = (text: string, json: unknown): string | null =>
  SPELT_OR_ESCAPED.test(text) ? keyIn(json) : null;

const SPELT_OR_ESCAPED = new RegExp([...FORBIDDEN_KEYS, "\\\\u"].join("|"));

function keyIn(json: unknown): string | null {
  if (typeof json !== "object" || json === null) return null;
  for (const [key, inner] of Object.entries(json)) {
    if (!Array.isArray(json) && FORBIDDEN_KEYS.has(key)) return key;
    const found = keyIn(inner);
    if (found !== null) return found;
  }
  return null;
}
