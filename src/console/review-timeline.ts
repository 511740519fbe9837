/** The timeline of a case read back: its entries in the order of happening, filtered by kind and by words. */

import { entryWords } from "../figures/entry-words.ts";
import { clockTimeOf } from "../format/instant.ts";
import { lately } from "../format/lately.ts";
import type { Protocol } from "../protocol/protocol.ts";
import type { CaseFile } from "../record/case.ts";
import type { Entry, Kind } from "../record/entry.ts";
import { type Fact, standing } from "../record/standing.ts";

/** Kinds that are looked for together, by the letter that picks them. */
export const GROUPS = [
  {
    letter: "c",
    name: "spans and moments",
    kinds: ["opened", "closed", "reopened", "span", "moment"],
  },
  {
    letter: "o",
    name: "orders, reminders",
    kinds: ["flow", "target", "reminder", "reminder-done"],
  },
  { letter: "d", name: "arrest doses", kinds: ["dose"] },
  { letter: "v", name: "volumes and levels", kinds: ["volume", "level"] },
  { letter: "h", name: "heparin, drugs, ACT", kinds: ["drug", "act"] },
  { letter: "m", name: "readings, gas, ACT", kinds: ["readings", "gas", "act"] },
  { letter: "e", name: "incidents, notes", kinds: ["incident", "note", "acknowledged"] },
  { letter: "k", name: "checklists", kinds: ["check"] },
  {
    letter: "t",
    name: "patient, plan, team",
    kinds: ["patient", "plan", "team", "circuit", "operator"],
  },
  { letter: "z", name: "put right, struck out", kinds: ["amend", "void", "clock"] },
] as const satisfies readonly { letter: string; name: string; kinds: readonly Kind[] }[];

export type Group = (typeof GROUPS)[number];

export type Timeline = {
  /** `null` shows every kind. */
  readonly group: Group | null;
  /** Words that a row has to hold, all of them. */
  readonly search: string;
  /** The id of the chosen entry; `null` for the first. */
  readonly chosen: string | null;
};

export const WHOLE_TIMELINE: Timeline = { group: null, search: "", chosen: null };

export type Row = {
  readonly fact: Fact;
  /** What is searched: time, number, words, note, initials and what was typed, in small letters. */
  readonly text: string;
};

type Shown = { readonly group: Group | null; readonly search: string; readonly rows: readonly Row[] };

/** What was last shown of a list of rows, so that scrolling costs nothing. */
const lastShown = new WeakMap<readonly Row[], Shown>();

/** Every entry, those struck out too, in the order of happening. A case read lately costs nothing to read again. */
export const rowsOf = ({ entries, protocol }: Pick<CaseFile, "entries" | "protocol">): readonly Row[] =>
  rowsIn(entries)(protocol);

const rowsIn = lately((entries: readonly Entry[]) => lately((protocol: Protocol) => made(entries, protocol)));

const made = (entries: readonly Entry[], protocol: Protocol): readonly Row[] =>
  standing(entries)
    .written.map((fact): Row => {
      const { entry } = fact;
      const { subject, says } = entryWords(entry, protocol);
      const { at, seq, note = "", by, typed } = entry;
      return {
        fact,
        text: `${clockTimeOf(at)} #${seq} ${subject} ${says} ${note} ${by} ${typed}`.toLowerCase(),
      };
    })
    .sort((a, b) => a.fact.at - b.fact.at || a.fact.entry.seq - b.fact.entry.seq);

/** The rows that a timeline shows. */
export function shownRows(
  file: Pick<CaseFile, "entries" | "protocol">,
  { group, search }: Pick<Timeline, "group" | "search">,
): readonly Row[] {
  const all = rowsOf(file);
  const last = lastShown.get(all);
  if (last && last.group === group && last.search === search) return last.rows;
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  const rows = all.filter(
    (row) => (group === null || isIn(group, row)) && words.every((word) => row.text.includes(word)),
  );
  lastShown.set(all, { group, search, rows });
  return rows;
}

/** The corrections are shown with what they put right. */
const isIn = ({ kinds }: Group, row: Row): boolean =>
  (kinds as readonly Kind[]).includes(row.fact.entry.kind) ||
  ((kinds as readonly Kind[]).includes("amend") && isPutRight(row));

/** The place of the chosen row; where it is not shown, of the first after it, else of the last. -1 with no rows. */
export function chosenPlace(file: Pick<CaseFile, "entries" | "protocol">, timeline: Timeline): number {
  const rows = shownRows(file, timeline);
  if (timeline.chosen === null) return Math.min(0, rows.length - 1);
  const place = rows.findIndex(({ fact }) => fact.entry.id === timeline.chosen);
  if (place >= 0) return place;
  const lost = rowsOf(file).find(({ fact }) => fact.entry.id === timeline.chosen);
  const after = lost ? rows.findIndex(({ fact }) => fact.at >= lost.fact.at) : 0;
  return after >= 0 ? after : rows.length - 1;
}

/** The timeline with the row at a place chosen; beyond its ends, the first or the last. */
export function choosing(
  file: Pick<CaseFile, "entries" | "protocol">,
  timeline: Timeline,
  place: number,
): Timeline {
  const rows = shownRows(file, timeline);
  const row = rows[Math.max(0, Math.min(rows.length - 1, place))];
  return row ? { ...timeline, chosen: row.fact.entry.id } : timeline;
}

const MILESTONES: readonly Kind[] = ["opened", "closed", "reopened", "operator", "span", "moment"];

/** Whether a row is a milestone of the run: the case opened or closed, a hand-over, a span on or off, a moment. */
const isMilestone = ({ fact: { entry, struck } }: Row): boolean => !struck && MILESTONES.includes(entry.kind);

/** The place of the next milestone from a place on, or of the one before it; the place itself where there is none. */
export function milestonePlace(rows: readonly Row[], place: number, step: 1 | -1): number {
  for (let next = place + step; next >= 0 && next < rows.length; next += step)
    if (isMilestone(rows[next] as Row)) return next;
  return place;
}

/** The moment of the next milestone after a moment, or of the last before it, in a stretch; `null` where there is none. */
export function milestoneMoment(
  rows: readonly Row[],
  moment: number,
  step: 1 | -1,
  { from, to }: { readonly from: number; readonly to: number },
): number | null {
  const isOne = (row: Row) => isMilestone(row) && row.fact.at >= from && row.fact.at <= to;
  const found =
    step === 1
      ? rows.find((row) => row.fact.at > moment && isOne(row))
      : rows.findLast((row) => row.fact.at < moment && isOne(row));
  return found?.fact.at ?? null;
}

/** The place of the last row that happened by a moment; the first where none did. */
export const placeAt = (rows: readonly Row[], moment: number): number =>
  Math.max(
    0,
    rows.findLastIndex(({ fact }) => fact.at <= moment),
  );

/** Whether an entry was put right or struck out. */
export const isPutRight = ({ fact }: Row): boolean => fact.corrections.length > 0;
