/** What can be made whole again from texts of a case of which some are damaged or cut short. Pure. */
import type * as z from "zod";
import { CASE_FORMAT, CASE_VERSION, type CaseFile } from "../record/case.ts";
import { type caseHeader, caseHeaderFor } from "../record/case-schema.ts";
import { type Entry, entrySchema } from "../record/entry.ts";
import { checkCase, MOST_ENTRIES } from "../record/reading-a-file.ts";
import { forbiddenKeyIn, parsedShallow } from "../record/untrusted.ts";
import { hashOf, headHash, prevOf } from "./chain.ts";

type Head = z.infer<typeof caseHeader>;
type Pieces = { readonly head: Head | null; readonly entries: readonly Entry[] };

/**
 * The longest case that can be put together: entries are followed along the chain through all texts, or taken in order
 * from one of them where it carries no chain. The first text is the file itself. `null` where not even the head of a
 * case of ours and its first entry are whole, and where the file is not damaged but something else.
 */
export function salvaged(texts: readonly string[]): CaseFile | null {
  const fewest = fewestEntries(texts[0] ?? "");
  if (fewest === null) return null;
  const sources = texts.map(piecesOf);
  const head = sources.find((source) => source.head !== null)?.head;
  if (!head) return null;
  const lists = [followed(head, sources), ...sources.map(({ entries }) => inOrder(entries))];
  const cases = lists.map((entries) => longestSound(head, entries));
  const best = cases.reduce((a, b) => (b.entries.length > a.entries.length ? b : a));
  const last = best.entries.at(-1);
  return last === undefined || best.entries.length < fewest ? null : { ...best, seal: hashOf(last) };
}

/**
 * A file that is whole JSON was not cut: it is only mended where no entry is lost by it, since what we cannot read in it
 * may be what a newer program wrote. `null` where it does not claim to be a case, or is one of a newer version.
 */
function fewestEntries(text: string): number | null {
  const json = parsed(text) as { format?: unknown; version?: unknown; entries?: unknown } | null;
  if (json === null) return 0;
  const isNewer = typeof json.version === "number" && json.version > CASE_VERSION;
  if (json.format !== CASE_FORMAT || isNewer || !Array.isArray(json.entries)) return null;
  return json.entries.length > MOST_ENTRIES ? null : json.entries.length;
}

function piecesOf(text: string): Pieces {
  const whole = parsed(text) as { entries?: unknown } | null;
  if (whole !== null) {
    const entries = Array.isArray(whole.entries) ? whole.entries : [];
    return { head: headIn(whole), entries: entries.flatMap(soundEntries) };
  }
  const [head = "", ...rest] = text.split(HEAD_END);
  const lines = rest.join("").split("\n");
  return {
    head: headIn(parsed(`${head}${HEAD_END}]}`)),
    entries: lines.flatMap((line) => soundEntries(parsed(line.trim().replace(/,$/, "")))),
  };
}

/** Where the entries begin in a file of ours, which has one of them on each line. */
const HEAD_END = '"entries": [';

function headIn(json: unknown): Head | null {
  if (json === null) return null;
  const { entries: _, seal: __, ...head } = json as Partial<CaseFile>;
  const read = caseHeaderFor(head.protocol).safeParse(head);
  return read.success ? read.data : null;
}

const soundEntries = (json: unknown): Entry[] => {
  const read = entrySchema.safeParse(json);
  return read.success ? [read.data] : [];
};

function parsed(text: string): object | null {
  try {
    const json = parsedShallow(text);
    return typeof json === "object" && json !== null && forbiddenKeyIn(text, json) === null ? json : null;
  } catch {
    return null;
  }
}

/** Each entry that carries the hash of the one before it; of two such, the one that others follow. */
function followed(head: Head, sources: readonly Pieces[]): Entry[] {
  const after = new Map<unknown, { entry: Entry; hash: string }[]>();
  for (const entry of sources.flatMap(({ entries }) => entries)) {
    const those = after.get(prevOf(entry));
    const one = { entry, hash: hashOf(entry) };
    if (those === undefined) after.set(prevOf(entry), [one]);
    else those.push(one);
  }
  const entries: Entry[] = [];
  for (let hash = headHash(head); ; ) {
    const next = after.get(hash) ?? [];
    const one = next.find((candidate) => after.has(candidate.hash)) ?? next[0];
    if (one === undefined || one.entry.seq !== entries.length + 1) return entries;
    entries.push(one.entry);
    hash = one.hash;
  }
}

/** Entries as far as their numbers go up one by one. */
function inOrder(entries: readonly Entry[]): Entry[] {
  const wrong = entries.findIndex(({ seq }, place) => seq !== place + 1);
  return wrong < 0 ? [...entries] : entries.slice(0, wrong);
}

/** The case with as many of the entries as make a sound one. Corrections only point back, so halving finds them. */
function longestSound(head: Head, entries: readonly Entry[]): CaseFile {
  const isSound = (count: number) => checkCase({ ...head, entries: entries.slice(0, count) }).ok;
  if (isSound(entries.length)) return { ...head, entries: [...entries] };
  let [sound, unsound] = [0, entries.length];
  while (unsound - sound > 1) {
    const middle = (sound + unsound) >> 1;
    if (isSound(middle)) sound = middle;
    else unsound = middle;
  }
  return { ...head, entries: entries.slice(0, sound) };
}
