/** The modes of the review: what a key means on the timeline, in a search, among the kinds, in a history, on the trends. */
import { courseOf } from "../figures/run.ts";
import { harmless } from "../format/text.ts";
import type { CaseFile } from "../record/case.ts";
import type { Key } from "./key.ts";
import { cursorOf, type Review, type ReviewMode, runWindow } from "./review.ts";
import {
  choosing,
  chosenPlace,
  GROUPS,
  isPutRight,
  milestoneMoment,
  milestonePlace,
  placeAt,
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

export function inTimeline(review: Within, key: Key): Review | null {
  const { file, timeline } = review;
  const rows = ROWS[key.name];
  if (rows !== undefined) return chosen(review, chosenPlace(file, timeline) + rows);
  switch (key.name) {
    case "enter":
      return historyShown(review);
    case "escape":
      return timeline.group || timeline.search
        ? { ...review, timeline: { ...WHOLE_TIMELINE, chosen: timeline.chosen } }
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
const STEPS: { readonly [char: string]: 1 | -1 | undefined } = { n: 1, p: -1 };

const chosen = (review: Within, place: number): Review => ({
  ...review,
  timeline: choosing(review.file, review.timeline, place),
});

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
      return { ...review, mode: { name: "timeline" } };
    case "escape":
      return { ...review, mode: { name: "timeline" }, timeline: looking("") };
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
    timeline: { ...review.timeline, group },
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

const MINUTE = 60_000;

export function inCharts(review: Within, key: Key): Review | null {
  const { file, trends } = review;
  const cursor = cursorOf(file, trends);
  switch (key.name) {
    case "left":
      return pointed(review, cursor - MINUTE);
    case "right":
      return pointed(review, cursor + MINUTE);
    case "home":
      return pointed(review, Number.NEGATIVE_INFINITY);
    case "end":
      return pointed(review, Number.POSITIVE_INFINITY);
    case "pageup":
      return pointed(review, measuredMoment(file, cursor, -1) ?? cursor);
    case "pagedown":
      return pointed(review, measuredMoment(file, cursor, 1) ?? cursor);
    case "up":
      return { ...review, trends: { ...trends, page: trends.page - 1 } };
    case "down":
      return { ...review, trends: { ...trends, page: trends.page + 1 } };
    case "enter":
      return {
        ...review,
        mode: { name: "timeline" },
        timeline: choosing(file, WHOLE_TIMELINE, placeAt(rowsOf(file), cursor)),
      };
    case "escape":
      return { ...review, mode: { name: "summary" } };
    case "char":
      return inChartsBy(review, key.char, cursor);
    default:
      return null;
  }
}

function inChartsBy(review: Within, char: string, cursor: number): Review | null {
  const { file, trends } = review;
  if (char === "h")
    return { ...review, trends: { ...trends, window: trends.window === "hour" ? "run" : "hour" } };
  const step = STEPS[char];
  return step === undefined
    ? null
    : pointed(review, milestoneMoment(rowsOf(file), cursor, step, runWindow(file)) ?? cursor);
}

/** The cursor on a moment, within the run. */
function pointed(review: Within, moment: number): Review {
  const { from, to } = runWindow(review.file);
  return { ...review, trends: { ...review.trends, cursor: Math.max(from, Math.min(to, moment)) } };
}

const MEASURED: readonly string[] = ["readings", "gas", "act"];

/** When something was measured next, or last before. */
function measuredMoment(file: CaseFile, moment: number, step: 1 | -1): number | null {
  const { facts } = courseOf(file).record;
  const found =
    step === 1
      ? facts.find(({ at, entry }) => at > moment && MEASURED.includes(entry.kind))
      : facts.findLast(({ at, entry }) => at < moment && MEASURED.includes(entry.kind));
  return found?.at ?? null;
}
