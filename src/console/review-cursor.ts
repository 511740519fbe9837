/** What a key means on the trends of the review: the cursor, the window, the pages of charts. */

import { courseOf } from "../figures/run.ts";
import { MINUTE } from "../format/duration.ts";
import type { CaseFile } from "../record/case.ts";
import type { Key } from "./key.ts";
import { cursorOf, type Review, runWindow } from "./review.ts";
import { STEPS, type Within } from "./review-modes.ts";
import { choosing, milestoneMoment, placeAt, rowsOf, WHOLE_TIMELINE } from "./review-timeline.ts";

/** `null` where the key means nothing on the trends. */
export function inTrends(review: Within, key: Key): Review | null {
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
      return inTrendsBy(review, key.char, cursor);
    default:
      return null;
  }
}

function inTrendsBy(review: Within, char: string, cursor: number): Review | null {
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
