/** How orders were answered: which entry answers which order, how soon, and whether it says what was asked. */
import { msOf } from "../format/instant.ts";
import type { CaseFile } from "../record/case.ts";
import type { Entry } from "../record/entry.ts";
import { type Fact, standing } from "../record/standing.ts";

export type Order = {
  /** The words, as they were said. */
  readonly says: string;
  /** When they were said, in milliseconds since the epoch. */
  readonly at: number;
  /** The entry that answers it. */
  readonly expected: Entry;
};

/** `put right` is right after a correction; `missed` is without any answer. */
export type AnswerVerdict = "right" | "put right" | "wrong" | "missed";

export type Answer = {
  readonly order: Order;
  readonly verdict: AnswerVerdict;
  /** Milliseconds from the order to the first key; `null` for none. */
  readonly delay: number | null;
  readonly fact: Fact | null;
};

export type Score = {
  /** In the order in which they were said. */
  readonly answers: readonly Answer[];
  /** Entries that nobody had asked for. */
  readonly extra: readonly Fact[];
  /** Corrections, and entries struck out. */
  readonly corrections: number;
};

/** Pure. An entry answers the first order before it that asks for its like and has no answer yet. */
export function scoreOf(orders: readonly Order[], file: Pick<CaseFile, "entries">): Score {
  const { written } = standing(file.entries);
  const open = new Set(written.filter(({ entry, struck }) => !struck && canAnswer(entry)));
  const answers = orders.map((order): Answer => {
    const fact = [...open].find(
      ({ logged }) => msOf(logged.loggedAt) >= order.at && likeOf(logged) === likeOf(order.expected),
    );
    if (fact === undefined) return { order, verdict: "missed", delay: null, fact: null };
    open.delete(fact);
    return { order, verdict: verdictOf(fact, order), delay: firstKeyOf(fact) - order.at, fact };
  });
  const corrections = written.filter(({ entry: { kind } }) => kind === "amend" || kind === "void").length;
  return { answers, extra: [...open], corrections };
}

/** What was typed at a person's own wish stands beside the orders: notes, incidents, what the program writes. */
const BESIDE = new Set<Entry["kind"]>([
  "opened",
  "amend",
  "void",
  "clock",
  "note",
  "incident",
  "acknowledged",
]);

const canAnswer = ({ kind }: Entry): boolean => !BESIDE.has(kind);

/** What an entry is about: an ACT answers no order for heparin. */
function likeOf(entry: Entry): string {
  switch (entry.kind) {
    case "span":
      return `span ${entry.what}`;
    case "drug":
      return `drug ${entry.name}`;
    case "volume":
      return `volume ${entry.direction}`;
    default:
      return entry.kind;
  }
}

function verdictOf({ entry, corrections }: Fact, { expected }: Order): AnswerVerdict {
  if (saidIn(entry) !== saidIn(expected)) return "wrong";
  return corrections.length > 0 ? "put right" : "right";
}

/** What an entry says, without when, by whom and how it was typed. */
function saidIn({ id: _, seq, at, loggedAt, by, typed, note, ...facts }: Entry): string {
  return JSON.stringify(Object.entries(facts).toSorted(([a], [b]) => (a < b ? -1 : 1)));
}

/** The entry's own time, unless the person gave it another. */
const firstKeyOf = ({ logged }: Fact): number =>
  msOf(logged.typed.includes("@") ? logged.loggedAt : logged.at);
