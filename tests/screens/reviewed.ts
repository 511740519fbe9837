// A run to look back at, and the review of it as a frame.

import { type Key, keysOf } from "../../src/console/key.ts";
import type { Review } from "../../src/console/review.ts";
import { beginReview, updateReview } from "../../src/console/review-update.ts";
import type { CaseFile } from "../../src/record/case.ts";
import type { Size } from "../../src/screens/size.ts";
import { at, given, typed, typedOn } from "../helpers/typed-case.ts";
import { frameOf, viewOf } from "./frame.ts";

export const USUAL: Size = { columns: 80, rows: 24 };
export const LARGE: Size = { columns: 140, rows: 45 };

const readings = (file: CaseFile, clock: string, flow: number, meanPressure: number): CaseFile =>
  given(
    file,
    {
      kind: "readings",
      values: { flow, meanPressure, arterialTemperature: 33.5, nasopharyngealTemperature: 34.1 },
    },
    clock,
  );

const BEGUN = given(
  typed(["08:01 h32000", "08:06 a512"]),
  { kind: "patient", weight: 80, height: 178, allergies: "latex" },
  "08:07",
);
const ON = typedOn(BEGUN, ["08:15 b", "08:20 x", "08:21 d600 a"]);
const MEASURED = readings(readings(readings(ON, "08:25", 4.6, 62), "08:40", 4.5, 55), "09:20", 4.4, 70);
export const RUN = typedOn(MEASURED, [
  ...["09:22 d300 r", "09:23 z 350 ; misheard", "09:24 e chatter in the venous line"],
  ...["09:30 x", "09:31 u400", "09:50 b"],
]);

export const press = (review: Review, ...keys: readonly (string | Key)[]): Review =>
  keys
    .flatMap((key) => (typeof key === "string" ? keysOf(key) : [key]))
    .reduce((before, key) => updateReview(before, key).review, review);

export const reviewed = (file: CaseFile = RUN, ...keys: readonly (string | Key)[]): Review =>
  press(beginReview([file]).review, ...keys);

export const frame = (review: Review, size: Size = USUAL): string[] =>
  frameOf(viewOf({ screen: "review", review, home: null }, at("12:00")), size);

export const TAB: Key = { name: "tab" };
export const ENTER: Key = { name: "enter" };
export const PAGE_UP: Key = { name: "pageup" };
