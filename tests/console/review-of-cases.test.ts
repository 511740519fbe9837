// Reviews among cases and screens: going from case to case, and back to where it came from.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type App, type AppStep, reviewApp, updateApp } from "../../src/console/app.ts";
import { type Key, keysOf } from "../../src/console/key.ts";
import { type Review, viewOf } from "../../src/console/review.ts";
import { beginReview, caseAbsent, caseArrived, updateReview } from "../../src/console/review-update.ts";
import { openStart } from "../../src/console/start.ts";
import { ESCAPE, paste } from "../helpers/console-keys.ts";
import { anyRun, play } from "../helpers/random-run.ts";
import { at, openedCase, typedOn } from "../helpers/typed-case.ts";
import { chosen, named, opened, press, RUN, TAB } from "./reviewing.ts";

describe("several cases", () => {
  const other = { ...openedCase(), id: "case-0002", label: "other" };

  test(", and . go from one to the next in the same view, and say where they end", () => {
    const review = press(beginReview([RUN, other]).review, TAB, "fd", ".");
    expect(review).toMatchObject({
      place: 1,
      file: other,
      mode: { name: "timeline" },
      timeline: { group: null },
    });
    expect(press(review, ".").notice).toBe("This is the last case.");
    expect(press(review, ",").file).toBe(RUN);
    expect(press(review, ",,").notice).toBe("This is the first case.");
    expect(press(opened(), ".").notice).toBe("This is the only case.");
  });

  test("kept in files are read when they are come to", () => {
    const begun = beginReview([{ path: "/a" }, { path: "/b" }]);
    expect(begun.wants).toBe("/a");
    const first = caseArrived(begun.review, "/a", RUN);
    expect(first).toMatchObject({ wants: null, review: { file: RUN, reading: null } });
    const step = updateReview(first.review, { name: "char", char: "." });
    expect(step).toMatchObject({ wants: "/b", review: { file: RUN, place: 1 } });
    expect(caseArrived(step.review, "/b", other).review).toMatchObject({ file: other, reading: null });
  });

  test("gone past quickly are not read; the one that is stopped at is", () => {
    const shelf = ["/a", "/b", "/c", "/d"].map((path) => ({ path }));
    const passing = press(beginReview(shelf).review, "...");
    expect(passing).toMatchObject({ place: 3, reading: { path: "/a" } });
    const late = caseArrived(passing, "/a", RUN);
    expect(late).toMatchObject({ wants: "/d", review: { file: null } });
    expect(caseAbsent(passing, "/a", "cut short.").wants).toBe("/d");
  });

  test("that cannot be read say so, and the others can still be come to", () => {
    const shelf = [{ path: "/a" }, RUN];
    const absent = caseAbsent(beginReview(shelf).review, "/a", "The case cannot be opened: it is cut short.");
    expect(absent.review).toMatchObject({
      file: null,
      notice: "The case cannot be opened: it is cut short.",
    });
    expect(press(absent.review, TAB, "/", ESCAPE, named("enter"), "f").file).toBeNull();
    expect(press(absent.review, ".").file).toBe(RUN);
  });

  test("a running case is read again with r and keeps its place", () => {
    const review = press(beginReview([{ path: "/a" }], 0, RUN).review, TAB, "nn");
    const step = updateReview(review, { name: "char", char: "r" });
    expect(step.wants).toBe("/a");
    const longer = typedOn(RUN, ["09:45 p330"]);
    const again = caseArrived(step.review, "/a", longer).review;
    expect(chosen(again)).toBe(chosen(review));
    expect(again.notice).toBe("Read again: 1 more entries.");
    expect(press(opened(), "r").notice).toContain("not kept in a file");
  });
});

describe("the review among the screens", () => {
  const HOME = { protocols: [] };
  const reviewIn = ({ app }: AppStep): Review => {
    if (app.screen !== "review") throw new Error(`the screen is ${app.screen}`);
    return app.review;
  };

  test("asks for the first case of a folder, and shows it when it comes", () => {
    const begun = reviewApp([{ path: "/a" }, { path: "/b" }], null);
    expect(begun.effects).toEqual([{ do: "open", path: "/a", to: "review" }]);
    const shown = updateApp(begun.app, { name: "reviewed", file: RUN, path: "/a" }, at("12:00"));
    expect(reviewIn(shown).file).toBe(RUN);
    const gone = updateApp(begun.app, { name: "could-not", fault: "gone.", path: "/a" }, at("12:00"));
    expect(reviewIn(gone).notice).toBe("gone.");
  });

  test("from the list has the other cases that can be read beside it", () => {
    const cases = [
      { path: "/a", id: "a" },
      { path: "/bad", id: "bad", fault: "cut short" },
      { path: "/b", id: "b" },
    ];
    const start: App = {
      screen: "start",
      start: { ...openStart([]), cases, chosen: 2 },
      home: HOME,
    };
    const review = reviewIn(updateApp(start, { name: "reviewed", file: RUN, path: "/b" }, at("12:00")));
    expect(review).toMatchObject({ place: 1, shelf: [{ path: "/a" }, { path: "/b" }], file: RUN });
  });

  test("leads back to where it came from", () => {
    const q: Key = { name: "char", char: "q" };
    expect(updateApp(reviewApp([RUN], HOME).app, q, at("12:00")).app.screen).toBe("start");
    expect(updateApp(reviewApp([RUN], null).app, q, at("12:00")).effects).toEqual([{ do: "quit" }]);
  });
});

const KEYS: readonly Key[] = [
  ...(
    ["tab", "backtab", "enter", "escape", "up", "down", "left", "right", "pageup", "pagedown"] as const
  ).map(named),
  ...(["home", "end", "backspace", "delete", "unescape"] as const).map(named),
  ...keysOf("npfhrz/.,cdm7 w"),
  paste("dose\n"),
];

test("whatever keys are pressed, the cases stay what they were and Esc leads back to a view", () => {
  fc.assert(
    fc.property(anyRun(30), fc.array(fc.constantFrom(...KEYS), { maxLength: 120 }), (run, keys) => {
      const file = play(run);
      const before = structuredClone(file);
      const after = press(beginReview([file, RUN]).review, ...keys);
      expect([file, RUN]).toContain(after.file);
      expect(file).toEqual(before);
      const back = press(after, ESCAPE, ESCAPE, ESCAPE);
      expect(back.mode.name).toBe("summary");
      expect(viewOf(back.mode)).toBe("summary");
    }),
    { numRuns: 60 },
  );
});
