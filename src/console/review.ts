/** The review of a case, or of one case after the other: three views of it, and nothing that writes. */

import { courseOf } from "../figures/run.ts";
import { type TrendWindow, wholeRun } from "../figures/trends.ts";
import { MINUTE } from "../format/duration.ts";
import { msOf } from "../format/instant.ts";
import type { CaseFile } from "../record/case.ts";
import type { Typing } from "./model.ts";
import { type Timeline, WHOLE_TIMELINE } from "./review-timeline.ts";

/** A case in hand, or one that is read when it is come to. */
export type Shelved = CaseFile | { readonly path: string };

export const VIEWS = ["summary", "timeline", "trends"] as const;
type ViewName = (typeof VIEWS)[number];

export type ReviewMode =
  | { readonly name: ViewName }
  /** The words that the timeline is searched for, while they are typed. */
  | ({ readonly name: "search" } & Typing)
  /** The letters of the kinds that can be looked at by themselves. */
  | { readonly name: "kinds" }
  /** How an entry was put right. */
  | { readonly name: "history"; readonly of: string; readonly page: number };

export type Review = {
  readonly shelf: readonly Shelved[];
  readonly place: number;
  /** The case that is shown; `null` while the first is read, or when it can't be. */
  readonly file: CaseFile | null;
  /** What is being read, and whether it is the case that is shown already; `null` for nothing. */
  readonly reading: { readonly path: string; readonly again: boolean } | null;
  readonly mode: ReviewMode;
  /** How far the summary has been turned over, in pages; after the last the first comes again. */
  readonly page: number;
  readonly timeline: Timeline;
  readonly trends: Trends;
  /** What there is to say, one sentence. */
  readonly notice: string | null;
  /** What there was before the last Esc, should it turn out to be the head of a key torn in transit. */
  readonly beforeEscape: Review | null;
};

export type Trends = {
  /** The moment that is read, in milliseconds since the epoch; `null` for the end of the run. */
  readonly cursor: number | null;
  readonly window: "hour" | "run";
  /** How far the charts have been turned over, in pages; after the last the first comes again. */
  readonly page: number;
};

const FRESH = {
  mode: { name: "summary" },
  page: 0,
  timeline: WHOLE_TIMELINE,
  trends: { cursor: null, window: "run", page: 0 },
  beforeEscape: null,
} as const satisfies Partial<Review>;

/** A review that begins with one of the shelf; `inHand` when that case has been read already. */
export function openReview(shelf: readonly Shelved[], place = 0, inHand: CaseFile | null = null): Review {
  const first = shelf[place];
  const file = inHand ?? (first && !isPath(first) ? first : null);
  const reading = file === null && first && isPath(first) ? { path: first.path, again: false } : null;
  return { ...FRESH, shelf, place, file, reading, notice: null };
}

/** Whether a case of the shelf is still to be read. */
export const isPath = (one: Shelved): one is { readonly path: string } =>
  "path" in one && !("entries" in one);

/** The case with what its views were like; the next case is looked at in the same view. */
export const turnedTo = (review: Review, file: CaseFile): Review => ({
  ...review,
  ...FRESH,
  mode: { name: viewOf(review.mode) },
  file,
  reading: null,
  notice: null,
});

/** The view that is shown, or that lies under what is. */
export const viewOf = (mode: ReviewMode): ViewName =>
  mode.name === "summary" || mode.name === "trends" ? mode.name : "timeline";

/** A case is looked at as it stood when its last entry was written, so that an open one does not run on. */
export const reviewedAt = ({ entries }: CaseFile): number => {
  const last = entries.at(-1);
  return last ? msOf(last.loggedAt) : 0;
};

/** The whole run of a case that is read back. */
export const runWindow = (file: CaseFile): TrendWindow => wholeRun(courseOf(file), reviewedAt(file));

/** The moment that the trends read: the cursor, or the end of the run. */
export const cursorOf = (file: CaseFile, { cursor }: Trends): number => cursor ?? runWindow(file).to;

const HALF_HOUR = 30 * MINUTE;

/** The stretch that the trends show: the whole run, or the hour about the cursor. */
export function shownWindow(file: CaseFile, trends: Trends): TrendWindow {
  const run = runWindow(file);
  if (trends.window === "run" || run.to - run.from <= 2 * HALF_HOUR) return run;
  const from = Math.max(run.from, Math.min(run.to - 2 * HALF_HOUR, cursorOf(file, trends) - HALF_HOUR));
  return { from, to: from + 2 * HALF_HOUR };
}
