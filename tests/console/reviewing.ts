// A case to be reviewed, keys pressed in its review, and what is chosen then.

import { type Key, keysOf } from "../../src/console/key.ts";
import { cursorOf, type Review } from "../../src/console/review.ts";
import { chosenPlace, shownRows } from "../../src/console/review-timeline.ts";
import { beginReview, updateReview } from "../../src/console/review-update.ts";
import { clockTime } from "../../src/format/instant.ts";
import type { CaseFile } from "../../src/record/case.ts";
import { given, typed, typedOn } from "../helpers/typed-case.ts";

const READ = { kind: "readings", values: { flow: 4.6, meanPressure: 62 } } as const;

export const RUN = typedOn(
  given(
    typedOn(typed(["08:01 h32000", "08:06 a512", "08:15 b", "08:20 x", "08:21 d600"]), ["08:25 n all well"]),
    READ,
    "08:30",
  ),
  ["08:35 d300", "08:36 z 350 ; misheard", "08:40 u80", "08:41 z! wrong bag", "09:10 x", "09:40 b"],
);

export const named = (name: Exclude<Key["name"], "char" | "paste">): Key => ({ name });
export const TAB = named("tab");

/** The review after keys: texts are typed, the rest pressed. */
export const press = (review: Review, ...keys: readonly (string | Key)[]): Review =>
  keys
    .flatMap((key) => (typeof key === "string" ? keysOf(key) : [key]))
    .reduce((before, key) => updateReview(before, key).review, review);

export const opened = (file: CaseFile = RUN): Review => beginReview([file]).review;
export const fileOf = ({ file }: Review): CaseFile => {
  if (!file) throw new Error("no case is shown");
  return file;
};
/** What the chosen row of the timeline says. */
export const chosen = (review: Review): string =>
  shownRows(fileOf(review), review.timeline)[chosenPlace(fileOf(review), review.timeline)]?.text ?? "";
export const shownCount = (review: Review): number => shownRows(fileOf(review), review.timeline).length;
export const cursor = (review: Review): string =>
  clockTime({ ms: cursorOf(fileOf(review), review.trends), offset: 60 });
