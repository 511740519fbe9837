/** What stands: the entries as put right, without those struck out, in the order in which things happened. */
import { MINUTE } from "../format/duration.ts";
import { msOf } from "../format/instant.ts";
import { lately } from "../format/lately.ts";
import { corrected } from "./correcting.ts";
import type { Entry, EntryOf, Kind } from "./entry.ts";

export type Correction = EntryOf<"amend"> | EntryOf<"void">;

export type Fact<E extends Entry = Entry> = {
  /** The entry as it stands now. */
  readonly entry: E;
  /** The entry as it was first written. */
  readonly logged: E;
  /** When it happened, in milliseconds since the epoch, as put right. */
  readonly at: number;
  /** Corrections in force, oldest first. */
  readonly corrections: readonly Correction[];
  readonly struck: boolean;
};

/** Whether it was written down a minute after it happened, or later: then it says when it was written. */
export const isLate = ({ entry, at }: Pick<Fact, "entry" | "at">): boolean =>
  msOf(entry.loggedAt) - at >= MINUTE;

export type Record = {
  /** In the order of happening; nothing that was struck out. */
  readonly facts: readonly Fact[];
  /** In the order of writing, with what was struck out. */
  readonly written: readonly Fact[];
};

/** Applies every correction. Pure; a list read lately costs nothing to read again. */
export const standing = lately((entries: readonly Entry[]): Record => {
  const inForce = correctionsInForce(entries);
  const written = entries.map((entry) => factOf(entry, inForce.get(entry.id)));
  return {
    facts: inOrder(written.some(({ struck }) => struck) ? written.filter(isInForce) : written),
    written,
  };
});

const isInForce = ({ struck }: Fact): boolean => !struck;

/** The same list where it is in the order of happening already, as nearly every list is. */
const inOrder = (facts: readonly Fact[]): readonly Fact[] =>
  facts.every((fact, place) => place === 0 || byTime(facts[place - 1] as Fact, fact) <= 0)
    ? facts
    : facts.toSorted(byTime);

const byTime = (a: Fact, b: Fact): number => a.at - b.at || a.entry.seq - b.entry.seq;

const sortedByKind = lately((facts: readonly Fact[]) => Map.groupBy(facts, ({ entry }) => entry.kind));

/** The facts of one kind, in the order in which things happened. Facts sorted lately cost nothing to sort again. */
export const ofKind = <K extends Kind>(facts: readonly Fact[], kind: K): readonly Fact<EntryOf<K>>[] =>
  (sortedByKind(facts).get(kind) ?? NONE) as unknown as readonly Fact<EntryOf<K>>[];

const NONE: readonly Fact[] = [];

/** The last fact of one kind. */
export const lastOf = <K extends Kind>(facts: readonly Fact[], kind: K): Fact<EntryOf<K>> | undefined =>
  ofKind(facts, kind).at(-1);

/** A correction may itself be struck out, which ends its force, or be put right, by one written after it. */
function correctionsInForce(entries: readonly Entry[]): Map<string, Correction[]> {
  const inForce = new Map<string, Correction[]>();
  for (const entry of entries.toReversed()) {
    if (entry.kind !== "amend" && entry.kind !== "void") continue;
    const own = inForce.get(entry.id) ?? [];
    if (own.some(({ kind }) => kind === "void")) continue;
    const correction = putRight(entry, own);
    inForce.set(correction.target, [correction, ...(inForce.get(correction.target) ?? [])]);
  }
  return inForce;
}

const putRight = <E extends Entry>(entry: E, corrections: readonly Correction[]): E =>
  corrections.reduce((now, one) => (one.kind === "amend" ? corrected(now, one.changes) : now), entry);

const UNCORRECTED: readonly Correction[] = [];
const plain = new WeakMap<Entry, Fact>();

/** Of an entry that nothing corrects there is one fact, however often the list grows. */
function factOf(logged: Entry, corrections: readonly Correction[] = UNCORRECTED): Fact {
  const known = corrections.length === 0 ? plain.get(logged) : undefined;
  if (known) return known;
  const fact = factMade(logged, corrections);
  if (corrections.length === 0) plain.set(logged, fact);
  return fact;
}

function factMade(logged: Entry, corrections: readonly Correction[]): Fact {
  const entry = putRight(logged, corrections);
  return {
    entry,
    logged,
    at: msOf(entry.at),
    corrections,
    struck: corrections.some(({ kind }) => kind === "void"),
  };
}
