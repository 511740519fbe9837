/** Text in plain ASCII, for systems that take nothing else: the signs of the trade spelt out, accents left off. */
import { harmless } from "../format/text.ts";

const SPELT: Readonly<Record<string, string>> = {
  ...{ "–": "-", "—": "-", "−": "-", "⁻": "-", "×": "x", "·": "|", "°": "", "…": "...", "→": "->" },
  ...{ µ: "u", μ: "u", π: "pi", "≥": ">=", "≤": "<=", "’": "'", "‘": "'", "“": '"', "”": '"' },
  ...{ ß: "ss", æ: "ae", Æ: "Ae", œ: "oe", ø: "o", Ø: "O", ł: "l", Ł: "L", đ: "d", ı: "i" },
};

const segmenter = new Intl.Segmenter("en", { granularity: "grapheme" });

/** Each sign spelt as it may be; what cannot be spelt is a question mark. */
export const asciiOf = (text: string): string =>
  harmless(text).replace(/[^\0-\x7f]+/g, (run) =>
    [...segmenter.segment(run)].map(({ segment }) => spelt(segment)).join(""),
  );

function spelt(sign: string): string {
  const known = SPELT[sign];
  return known ?? (sign.normalize("NFKD").replace(/[^\x20-\x7e]/g, "") || "?");
}

/** The same for every text in a block, before it is laid out: what is spelt longer still fits. */
export function inAsciiThroughout<T>(value: T): T {
  if (typeof value === "string") return asciiOf(value) as T;
  if (typeof value !== "object" || value === null) return value;
  if (Array.isArray(value)) return value.map(inAsciiThroughout) as T;
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => [key, inAsciiThroughout(inner)]),
  ) as T;
}
