/** What a key does in the review: a review and a key give the next one, and nothing is ever written. */
import { harmless } from "../format/text.ts";
import type { CaseFile } from "../record/case.ts";
import type { Key } from "./key.ts";
import { isPath, openReview, type Review, turnedTo, VIEWS, viewOf } from "./review.ts";
import { inTrends } from "./review-cursor.ts";
import { inHistory, inKinds, inSearch, inTimeline, searching, type Within } from "./review-modes.ts";

export type ReviewStep = {
  readonly review: Review;
  readonly leaves: boolean;
  /** The path of a case that is to be read; `null` for none. */
  readonly wants: string | null;
};

const stays = (review: Review): ReviewStep => ({ review, leaves: false, wants: null });

/** Opens a review, and says which case is to be read first where none is in hand. */
export function beginReview(...opened: Parameters<typeof openReview>): ReviewStep {
  const review = openReview(...opened);
  return { ...stays(review), wants: review.reading?.path ?? null };
}

/** Pure: the same review and key always give the same step. */
export function updateReview(review: Review, key: Key): ReviewStep {
  if (key.name === "unescape") return stays(review.beforeEscape ?? review);
  const step = keyPressed({ ...review, beforeEscape: null, notice: null }, key);
  if (key.name !== "escape") return step;
  return { ...step, review: { ...step.review, beforeEscape: { ...review, beforeEscape: null } } };
}

function keyPressed(review: Review, key: Key): ReviewStep {
  if (key.name === "interrupt") return { ...stays(review), leaves: true };
  const { file } = review;
  if (file === null) return onShelf(review, key);
  const inMode = withinMode({ ...review, file }, key);
  return inMode ? stays(inMode) : onShelf(review, key);
}

/** `null` where the key means nothing in the mode: then it means what it does everywhere. */
function withinMode(review: Within, key: Key): Review | null {
  const { mode } = review;
  switch (mode.name) {
    case "search":
      return inSearch(review, mode, key);
    case "kinds":
      return inKinds(review, key);
    case "history":
      return inHistory(review, mode, key);
    case "summary":
      return inSummary(review, key);
    case "timeline":
      return inTimeline(review, key);
    case "trends":
      return inTrends(review, key);
    default:
      return mode satisfies never;
  }
}

function inSummary(review: Within, key: Key): Review | null {
  switch (key.name) {
    case "up":
    case "pageup":
      return { ...review, page: review.page - 1 };
    case "down":
    case "pagedown":
      return { ...review, page: review.page + 1 };
    case "escape":
      return { ...review, notice: "This is the review of the case: q leaves it." };
    default:
      return null;
  }
}

/** Keys that mean the same in every view. */
function onShelf(review: Review, key: Key): ReviewStep {
  switch (key.name) {
    case "tab":
    case "backtab":
      return stays(nextView(review, key.name === "tab" ? 1 : -1));
    case "paste":
      return stays({ ...review, notice: "Pasted text is only taken by a search: press / first." });
    case "char":
      return letter(review, key.char);
    default:
      return stays(review);
  }
}

function letter(review: Review, char: string): ReviewStep {
  switch (char) {
    case "q":
      return { ...stays(review), leaves: true };
    case ",":
      return neighbour(review, -1);
    case ".":
      return neighbour(review, 1);
    case "r":
      return readAgain(review);
    case "/":
      return stays(review.file === null ? review : searching(review));
    default:
      return stays(
        char.trim() === ""
          ? review
          : { ...review, notice: `"${harmless(char)}" does nothing here: the keys are in the last row.` },
      );
  }
}

function nextView(review: Review, step: 1 | -1): Review {
  const place = (VIEWS.indexOf(viewOf(review.mode)) + step + VIEWS.length) % VIEWS.length;
  return { ...review, mode: { name: VIEWS[place] ?? "summary" } };
}

/** The next case of the shelf. While one is read, only the place moves: what is read then is where it has come to. */
function neighbour(review: Review, step: 1 | -1): ReviewStep {
  const place = review.place + step;
  const next = review.shelf[place];
  if (next === undefined) {
    const end = step === 1 ? "last" : "first";
    const only = review.shelf.length === 1 ? "the only" : `the ${end}`;
    return stays({ ...review, notice: `This is ${only} case.` });
  }
  if (!isPath(next)) return stays(turnedTo({ ...review, place }, next));
  if (review.reading !== null) return stays({ ...review, place });
  return asking({ ...review, place }, next.path, false);
}

function readAgain(review: Review): ReviewStep {
  const here = review.shelf[review.place];
  if (here === undefined || !isPath(here))
    return stays({ ...review, notice: "This case is not kept in a file: there is nothing to read again." });
  return review.reading === null ? asking(review, here.path, true) : stays(review);
}

const asking = (review: Review, path: string, again: boolean): ReviewStep => ({
  review: { ...review, reading: { path, again } },
  leaves: false,
  wants: path,
});

/** A case that was asked for has been read. One read again keeps its view; where the place has moved on, the next is asked for. */
export function caseArrived(review: Review, path: string, file: CaseFile): ReviewStep {
  const elsewhere = movedOn(review, path);
  if (elsewhere) return elsewhere;
  if (!review.reading?.again || review.file === null) return stays(turnedTo(review, file));
  const more = file.entries.length - review.file.entries.length;
  const notice = more === 0 ? "Read again: nothing new." : `Read again: ${more} more entries.`;
  return stays({ ...review, file, reading: null, notice });
}

/** A case that was asked for cannot be read; `fault` is a sentence. */
export function caseAbsent(review: Review, path: string, fault: string): ReviewStep {
  return movedOn(review, path) ?? stays({ ...review, file: null, reading: null, notice: fault });
}

function movedOn(review: Review, path: string): ReviewStep | null {
  const here = review.shelf[review.place];
  if (here === undefined || !isPath(here) || here.path === path) return null;
  return asking(review, here.path, false);
}
