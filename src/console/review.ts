/** The review screen: a case read back, scrolled and never written to. */
import type { CaseFile } from "../record/case.ts";
import type { Key } from "./key.ts";

export type Review = {
  readonly file: CaseFile;
  /** How many rows of the log lie above the view. */
  readonly scroll: number;
  /** Other cases that can be stepped to. */
  readonly others: readonly CaseFile[];
};

export type ReviewStep = { readonly review: Review; readonly leaves: boolean };

export const openReview = (file: CaseFile, others: readonly CaseFile[] = []): Review => ({
  file,
  scroll: 0,
  others,
});

const STEPS: Partial<Record<Key["name"], number>> = {
  up: -1,
  down: 1,
  pageup: -10,
  pagedown: 10,
  home: -Number.MAX_SAFE_INTEGER,
  end: Number.MAX_SAFE_INTEGER,
};

/** Arrows and pages scroll, left and right go from case to case, Esc or q leaves. */
export function updateReview(review: Review, key: Key): ReviewStep {
  const step = STEPS[key.name];
  if (step !== undefined) {
    const scroll = Math.max(0, Math.min(review.file.entries.length - 1, review.scroll + step));
    return { review: { ...review, scroll }, leaves: false };
  }
  if (key.name === "left" || key.name === "right")
    return { review: neighbour(review, key.name === "left" ? -1 : 1), leaves: false };
  const leaves =
    key.name === "escape" || key.name === "interrupt" || (key.name === "char" && key.char === "q");
  return { review, leaves };
}

function neighbour(review: Review, step: 1 | -1): Review {
  const place = review.others.indexOf(review.file) + step;
  const file = review.others[place];
  return file ? { ...review, file, scroll: 0 } : review;
}
