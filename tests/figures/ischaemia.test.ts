/** How long the heart has been without arrest solution. */
import { expect, test } from "vitest";
import { ischaemiaOf } from "../../src/figures/ischaemia.ts";
import { runAt } from "../helpers/typed-case.ts";
import { told } from "./told-case.ts";

const since = (clock: string, ...lines: string[]) =>
  ischaemiaOf(runAt(told(["09:00 b", ...lines]), clock)).map(({ route, since }) => [route, since.value]);

test("without a clamp there is none", () => {
  expect(since("09:10", "09:02 d 300 a")).toEqual([]);
  expect(since("10:00", "09:05 x", "09:06 d 300 a", "09:50 x")).toEqual([]);
});

test("before the first dose it is since the clamp went on", () => {
  expect(since("09:07", "09:05 x")).toEqual([[null, 120]]);
});

test("each route has a time of its own, the longest first", () => {
  const lines = ["09:05 x", "09:06 d 700 a", "09:10 d 200 l", "09:12 d 150 r", "09:30 d 300 a"];
  expect(since("09:31", ...lines)).toEqual([
    ["left-ostium", 21 * 60],
    ["right-ostium", 19 * 60],
    ["root", 60],
  ]);
});

test("while a dose runs by a route, that route has none", () => {
  expect(since("09:40", "09:05 x", "09:06 d 700 a", "09:39 d s")).toEqual([
    ["root", 34 * 60],
    ["coronary-sinus", 0],
  ]);
});

test("doses under an earlier clamp do not count", () => {
  expect(since("10:12", "09:05 x", "09:06 d 700 a", "09:50 x", "10:10 x")).toEqual([[null, 120]]);
});
