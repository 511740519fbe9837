// The review of a case: what each key does in each view, and the histories.

import { describe, expect, test } from "vitest";
import { type Key, keysOf } from "../../src/console/key.ts";
import { type Review, runWindow, shownWindow } from "../../src/console/review.ts";
import { historyOf } from "../../src/console/review-history.ts";
import { GROUPS, rowsOf } from "../../src/console/review-timeline.ts";
import { updateReview } from "../../src/console/review-update.ts";
import { clockTime } from "../../src/format/instant.ts";
import { ESCAPE, paste } from "../helpers/console-keys.ts";
import { typedOn } from "../helpers/typed-case.ts";
import { chosen, cursor, named, opened, press, RUN, shownCount, TAB } from "./reviewing.ts";

describe("the views", () => {
  test("begin with the summary and turn with Tab, either way", () => {
    const review = opened();
    expect(review.mode.name).toBe("summary");
    expect(press(review, TAB).mode.name).toBe("timeline");
    expect(press(review, TAB, TAB).mode.name).toBe("trends");
    expect(press(review, TAB, TAB, TAB).mode.name).toBe("summary");
    expect(press(review, named("backtab")).mode.name).toBe("trends");
  });

  test.each(["q", named("interrupt")])("are left with %o", (key) => {
    const [pressed] = typeof key === "string" ? keysOf(key) : [key];
    expect(updateReview(opened(), pressed as Key).leaves).toBe(true);
  });

  test("Esc goes a step back and never out", () => {
    const review = press(opened(), TAB, "f", "d", named("enter"));
    expect(review.mode.name).toBe("history");
    const steps = [0, 1, 2, 3].map((count) => press(review, ...Array.from({ length: count }, () => ESCAPE)));
    expect(steps.map(({ mode }) => mode.name)).toEqual(["history", "timeline", "timeline", "summary"]);
    expect(steps.map(({ timeline }) => timeline.group?.letter)).toEqual(["d", "d", undefined, undefined]);
    expect(updateReview(steps[3] as Review, ESCAPE)).toMatchObject({ leaves: false });
  });

  test("an Esc that was the head of a torn key is taken back", () => {
    const review = press(opened(), TAB, "f", "d");
    expect(press(review, ESCAPE, named("unescape"))).toEqual(review);
  });

  test("a key that means nothing is answered", () => {
    expect(press(opened(), "§").notice).toContain('"§"');
    expect(press(opened(), paste("urine")).notice).toContain("/");
  });
});

describe("the timeline", () => {
  const timeline = press(opened(), TAB);

  test("shows every entry in the order of happening, corrections and struck out ones too", () => {
    const late = typedOn(RUN, ["09:50 u60 @08:22"]);
    const rows = rowsOf(late);
    expect(rows).toHaveLength(late.entries.length);
    expect(rows.map(({ fact }) => fact.at)).toEqual(
      rows.map(({ fact }) => fact.at).toSorted((a, b) => a - b),
    );
    const place = rows.findIndex(({ text }) => text.includes("60 ml"));
    expect(rows[place + 1]?.text).toContain("all well");
  });

  test("moves by a row, by ten, and to its ends, and stays within them", () => {
    expect(chosen(press(timeline, named("down")))).toContain("heparin");
    expect(chosen(press(timeline, named("up")))).toContain("opened");
    expect(chosen(press(timeline, named("pagedown")))).toContain("#11 out 80 ml");
    expect(chosen(press(timeline, named("end"), named("down")))).toContain("bypass off");
    expect(chosen(press(timeline, named("end"), named("home")))).toContain("opened");
  });

  test("n and p jump to the next milestone and back", () => {
    const jumps = ["n", "nn", "nnn", "nnnp"].map((keys) => chosen(press(timeline, keys)));
    expect(jumps.map((row) => row.split(" ").slice(2, 4).join(" "))).toEqual([
      "bypass on",
      "clamp on",
      "clamp off",
      "clamp on",
    ]);
    expect(press(timeline, "nnnnn").notice).toBe("There is no milestone after this.");
  });

  test.each([
    ["c", 5],
    ["o", 0],
    ["d", 2],
    ["v", 1],
    ["h", 2],
    ["m", 2],
    ["e", 1],
    ["k", 0],
    ["t", 0],
    ["z", 4],
  ])("f %s shows those kinds alone: %i rows", (letter, count) => {
    expect(shownCount(press(timeline, `f${letter}`))).toBe(count);
    expect(shownCount(press(timeline, `f${letter}f\n`))).toBe(RUN.entries.length);
  });

  test("every kind of entry can be looked at by itself", () => {
    expect(new Set(GROUPS.map(({ letter }) => letter)).size).toBe(GROUPS.length);
    const kinds = new Set<string>(GROUPS.flatMap((group) => group.kinds));
    expect([...new Set(RUN.entries.map(({ kind }) => kind))].filter((kind) => !kinds.has(kind))).toEqual([]);
  });

  test("the row that was chosen stays chosen when others go, or the next one takes its place", () => {
    const onNote = press(timeline, "/all well\n");
    expect(chosen(onNote)).toContain("all well");
    const among = press(onNote, ESCAPE, "fd");
    expect(chosen(among)).toContain("350");
    expect(chosen(press(among, "f\n"))).toContain("350");
  });

  test("a letter that is no kind leaves the list open", () => {
    expect(press(timeline, "fq")).toMatchObject({
      mode: { name: "kinds" },
      notice: '"q" is none of the letters.',
    });
  });
});

describe("the search", () => {
  test("narrows the timeline with every letter, from any view", () => {
    const counts = ["/", "/d", "/do", "/dose", "/dose 600"].map((keys) => shownCount(press(opened(), keys)));
    expect(counts[0]).toBe(RUN.entries.length);
    expect(counts).toEqual(counts.toSorted((a, b) => b - a));
    expect(counts.at(-1)).toBe(1);
  });

  test("looks for all of the words, in any order, whatever their size, in notes and in what was typed", () => {
    expect(chosen(press(opened(), "/WELL all\n"))).toContain("all well");
    expect(chosen(press(opened(), "/misheard\n"))).toContain("put right");
    expect(chosen(press(opened(), "/h32000\n"))).toContain("heparin");
  });

  test("keeps with Enter and clears with Esc", () => {
    expect(press(opened(), "/dose\n")).toMatchObject({
      mode: { name: "timeline" },
      timeline: { search: "dose" },
    });
    expect(press(opened(), "/dose", ESCAPE)).toMatchObject({
      mode: { name: "timeline" },
      timeline: { search: "" },
    });
  });

  test("takes pasted text, without what it hides", () => {
    expect(press(opened(), "/", paste("do\u0007se\n")).timeline.search).toBe("do se");
  });

  test("finds nothing without harm", () => {
    const none = press(opened(), "/no such thing\n");
    expect(shownCount(none)).toBe(0);
    expect(press(none, named("down"), "n", named("enter"))).toMatchObject({ notice: "No entry is chosen." });
  });
});

describe("the history of an entry", () => {
  const idOf = (words: string) => rowsOf(RUN).find(({ text }) => text.includes(words))?.fact.entry.id ?? "";

  test("tells what was written, what was made of it, by whom, when and why", () => {
    const history = historyOf(RUN, idOf("dose given · 350"));
    expect(history?.written.says).toBe("given · 300 mL");
    expect(history?.stands?.says).toBe("given · 350 mL");
    expect(history?.steps).toMatchObject([
      {
        inForce: true,
        depth: 0,
        reason: "misheard",
        said: { says: "given · 350 mL" },
        correction: { by: "AB" },
      },
    ]);
  });

  test("of a correction is that of what it corrects", () => {
    expect(historyOf(RUN, idOf("put right"))).toEqual(historyOf(RUN, idOf("dose given · 350")));
  });

  test("of an entry struck out has the reason, and nothing stands", () => {
    const history = historyOf(RUN, idOf("80 ml"));
    expect(history).toMatchObject({
      stands: null,
      steps: [{ said: null, reason: "wrong bag", inForce: true }],
    });
  });

  test("shows a strike that was taken back as not in force, with what took it back", () => {
    const back = typedOn(RUN, ["09:50 z#11 back"]);
    const history = historyOf(back, "e11");
    expect(history?.stands?.says).toContain("80 mL");
    expect(history?.steps.map(({ depth, inForce }) => [depth, inForce])).toEqual([
      [0, false],
      [1, true],
    ]);
  });

  test("of an entry never put right has no steps, and of no entry there is none", () => {
    expect(historyOf(RUN, "e1")?.steps).toEqual([]);
    expect(historyOf(RUN, "e999")).toBeNull();
  });

  test("opens with Enter; n and p go to the others that were put right", () => {
    const first = press(opened(), TAB, "fz", named("enter"));
    expect(first.mode).toMatchObject({ name: "history", of: idOf("dose given · 350") });
    const second = press(first, "n");
    expect(second.mode).toMatchObject({ of: idOf("80 ml") });
    expect(press(second, "p").mode).toEqual(first.mode);
    expect(press(second, "n").notice).toBe("No entry after this was put right.");
  });
});

describe("the cursor on the trends", () => {
  const trends = press(opened(), TAB, TAB);

  test("begins at the end of the run and moves by a minute, within the run", () => {
    expect(cursor(trends)).toBe("09:40:00");
    expect(cursor(press(trends, named("left"), named("left")))).toBe("09:38:00");
    expect(cursor(press(trends, named("right")))).toBe("09:40:00");
    expect(cursor(press(trends, named("home"), named("left")))).toBe("08:06:00");
    expect(cursor(press(trends, named("home"), named("end")))).toBe("09:40:00");
  });

  test("jumps to what was measured and to milestones", () => {
    expect(cursor(press(trends, named("pageup")))).toBe("08:30:00");
    expect(cursor(press(trends, named("pageup"), named("pageup")))).toBe("08:06:00");
    expect(cursor(press(trends, named("pageup"), named("pagedown")))).toBe("08:30:00");
    expect(cursor(press(trends, "p"))).toBe("09:10:00");
    expect(cursor(press(trends, "ppn"))).toBe("09:10:00");
  });

  test("h shows the hour about it, and the whole run again", () => {
    const hour = press(trends, "p", "h");
    const { from, to } = shownWindow(RUN, hour.trends);
    expect(to - from).toBe(60 * 60_000);
    expect(clockTime({ ms: from, offset: 60 })).toBe("08:40:00");
    expect(shownWindow(RUN, press(hour, "h").trends)).toEqual(runWindow(RUN));
  });

  test("Enter leads to that moment on the timeline", () => {
    const there = press(trends, named("pageup"), named("enter"));
    expect(there.mode.name).toBe("timeline");
    expect(chosen(there)).toContain("readings");
  });
});
