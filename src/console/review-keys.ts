/** The keys of the review, for its last row: what each does in a view. */
import type { ReviewMode } from "./review.ts";

export type ReviewKey = readonly [key: string, what: string];

/** The most needed first: what does not fit is left out from the end. */
export const REVIEW_KEYS: Readonly<Record<ReviewMode["name"], readonly ReviewKey[]>> = {
  summary: [
    ["Tab", "timeline"],
    ["↑ ↓", "page"],
    ["/", "search"],
    ["r", "read again"],
  ],
  timeline: [
    ["Tab", "trends"],
    ["↑ ↓", "move"],
    ["Enter", "history"],
    ["/", "search"],
    ["f", "kinds"],
    ["n p", "milestone"],
    ["r", "read again"],
  ],
  trends: [
    ["Tab", "summary"],
    ["← →", "minute"],
    ["PgUp PgDn", "reading"],
    ["n p", "milestone"],
    ["h", "hour"],
    ["↑ ↓", "charts"],
    ["Enter", "timeline"],
    ["r", "read again"],
  ],
  search: [
    ["Enter", "keep"],
    ["Esc", "clear"],
  ],
  kinds: [
    ["letter", "only these"],
    ["Enter", "all kinds"],
    ["Esc", "as before"],
  ],
  history: [
    ["↑ ↓", "scroll"],
    ["n p", "next, previous put right"],
    ["Esc", "back"],
  ],
};

/** Always there, at the right end: other cases where there are any, and the way out. */
export const LEAVING: ReviewKey = ["q", "leave"];
export const OTHER_CASES: ReviewKey = [", .", "case"];
