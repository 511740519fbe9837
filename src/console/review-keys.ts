/** The keys of the review, for its last row: what each does in a view. */
import type { ReviewMode } from "./review.ts";

export type ReviewKey = readonly [key: string, what: string];

export const READ_AGAIN: ReviewKey = ["r", "read again"];

/** The most needed first: what does not fit is left out from the end. */
export const REVIEW_KEYS: Readonly<Record<ReviewMode["name"], readonly ReviewKey[]>> = {
  summary: [["Tab", "view"], ["↑↓", "page"], ["/", "find"], READ_AGAIN],
  timeline: [
    ["Tab", "view"],
    ["↑↓", "move"],
    ["Enter", "history"],
    ["/", "find"],
    ["f", "kind"],
    ["n p", "milestone"],
    READ_AGAIN,
  ],
  trends: [
    ["Tab", "view"],
    ["←→", "minute"],
    ["PgUp PgDn", "reading"],
    ["n p", "milestone"],
    ["h", "hour/run"],
    ["↑↓", "charts"],
    ["Enter", "timeline"],
    READ_AGAIN,
  ],
  search: [
    ["Enter", "keep"],
    ["Esc", "clear"],
    ["↑↓", "move"],
  ],
  kinds: [
    ["letter", "only these"],
    ["Enter", "all kinds"],
    ["Esc", "as before"],
  ],
  history: [
    ["↑↓", "page"],
    ["n p", "next, last put right"],
    ["Esc", "back"],
  ],
};

/** The way out, always at the end of the row. */
export const LEAVING: ReviewKey = ["q", "leave"];

/** Beside the number of the case, where there are others. */
export const OTHER_CASES = ", .";
