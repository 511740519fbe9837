/** What a key means on the timeline of the review, in a search, among the kinds, and in a history. */
import { harmless } from "../format/text.ts";
import type { CaseFile } from "../record/case.ts";
import type { Key } from "./key.ts";
import type { Review, ReviewMode } from "./review.ts";
import {
  choosing,
  chosenPlace,
  GROUPS,
  isPutRight,
  milestonePlace,
  rowsOf,
  shownRows,
  type Timeline,
  WHOLE_TIMELINE,
} from "./review-timeline.ts";
import { edited, inserted, typing } from "./typing.ts";

/** A review that has a case to show. */
export type Within = Review & { readonly file: CaseFile };

type ModeOf<N extends ReviewMode["name"]> = Extract<ReviewMode, { name: N }>;

const ROWS: Partial<Record<Key["name"], number>> = {
  up: -1,
  down: 1,
  pageup: -10,
  pagedown: 10,
  home: -Number.MAX_SAFE_INTEGER,
  end: Number.MAX_SAFE_INTEGER,
};

/** A key in the timeline; `null` when it does nothing here. */
export function inTimeline(review: Within, key: Key): Review | null {
  const { file, timeline } = review;
  const rows = ROWS[key.name];
  if (rows !== undefined) return chosen(review, chosenPlace(file, timeline) + rows);
  switch (key.name) {
    case "enter":
      return historyShown(review);
    case "escape":
      return timeline.group || timeline.search
        ? { ...review, timeline: { ...WHOLE_TIMELINE, chosen: pinned(review).chosen } }
        : { ...review, mode: { name: "summary" } };
    case "char":
      return inTimelineBy(review, key.char);
    default:
      return null;
  }
}

function inTimelineBy(review: Within, char: string): Review | null {
  if (char === "f") return { ...review, mode: { name: "kinds" } };
  const step = STEPS[char];
  if (step === undefined) return null;
  const { file, timeline } = review;
  const place = chosenPlace(file, timeline);
  const next = milestonePlace(shownRows(file, timeline), place, step);
  return next === place
    ? { ...review, notice: `There is no milestone ${step === 1 ? "after" : "before"} this.` }
    : chosen(review, next);
}

/** The keys that jump, by the way they go. */
export const STEPS: { readonly [char: string]: 1 | -1 | undefined } = { n: 1, p: -1 };

const chosen = (review: Within, place: number): Review => ({
  ...review,
  timeline: choosing(review.file, review.timeline, place),
});

/** The timeline with the row that is looked at chosen by name, so that it stays chosen when others come or go. */
const pinned = ({ file, timeline }: Within): Timeline =>
  choosing(file, timeline, chosenPlace(file, timeline));

function historyShown(review: Within): Review {
  const row = shownRows(review.file, review.timeline)[chosenPlace(review.file, review.timeline)];
  if (!row) return { ...review, notice: "No entry is chosen." };
  return { ...review, mode: { name: "history", of: row.fact.entry.id, page: 0 } };
}

/** The search with the words as they were left. */
export const searching = (review: Review): Review => ({
  ...review,
  mode: { name: "search", ...typing(review.timeline.search) },
});

/** What is typed is looked for at once. */
export function inSearch(review: Within, mode: ModeOf<"search">, key: Key): Review {
  const looking = (search: string): Timeline => ({ ...review.timeline, search });
  switch (key.name) {
    case "enter":
      return { ...review, mode: { name: "timeline" }, timeline: pinned(review) };
    case "escape":
      return { ...review, mode: { name: "timeline" }, timeline: { ...pinned(review), search: "" } };
    case "up":
    case "down":
      return inTimeline(review, key) ?? review;
    default: {
      const after = key.name === "paste" ? inserted(mode, harmless(key.text)) : edited(mode, key);
      if (after === null) return review;
      return { ...review, mode: { name: "search", ...after }, timeline: looking(after.text) };
    }
  }
}

/** A letter shows its kinds alone, Enter shows all of them. */
export function inKinds(review: Within, key: Key): Review {
  const only = (group: Timeline["group"]): Review => ({
    ...review,
    mode: { name: "timeline" },
    timeline: { ...pinned(review), group },
  });
  if (key.name === "enter") return only(null);
  if (key.name === "escape") return { ...review, mode: { name: "timeline" } };
  if (key.name !== "char") return review;
  const group = GROUPS.find(({ letter }) => letter === key.char);
  return group ? only(group) : { ...review, notice: `"${harmless(key.char)}" is none of the letters.` };
}

/** Other histories are those of the entries put right before and after this one. */
export function inHistory(review: Within, mode: ModeOf<"history">, key: Key): Review | null {
  switch (key.name) {
    case "up":
    case "pageup":
      return { ...review, mode: { ...mode, page: mode.page - 1 } };
    case "down":
    case "pagedown":
      return { ...review, mode: { ...mode, page: mode.page + 1 } };
    case "escape":
    case "enter":
      return { ...review, mode: { name: "timeline" } };
    case "char": {
      const step = STEPS[key.char];
      return step === undefined ? null : otherHistory(review, mode.of, step);
    }
    default:
      return null;
  }
}

function otherHistory(review: Within, of: string, step: 1 | -1): Review {
  const rows = rowsOf(review.file);
  const place = rows.findIndex(({ fact }) => fact.entry.id === of);
  const row =
    step === 1
      ? rows.find((one, i) => i > place && isPutRight(one))
      : rows.findLast((one, i) => i < place && isPutRight(one));
  if (!row) return { ...review, notice: `No entry ${step === 1 ? "after" : "before"} this was put right.` };
  const { id } = row.fact.entry;
  return {
    ...review,
    mode: { name: "history", of: id, page: 0 },
    timeline: { ...WHOLE_TIMELINE, chosen: id },
  };
}
