// The review as it is seen: what stands where.

import { renderToString } from "ink";
import { createElement } from "react";
import { describe, expect, test } from "vitest";
import type { Key } from "../../src/console/key.ts";
import { openModel } from "../../src/console/model.ts";
import { beginReview, caseAbsent } from "../../src/console/review-update.ts";
import { LookContext } from "../../src/screens/chart-dots.ts";
import { Screen } from "../../src/screens/Root.tsx";
import type { Size } from "../../src/screens/size.ts";
import { press as typedInRun } from "../helpers/console-keys.ts";
import { at, typed } from "../helpers/typed-case.ts";
import { frameOf, runView, viewOf } from "./frame.ts";
import { ENTER, frame, LARGE, PAGE_UP, press, RUN, reviewed, TAB, USUAL } from "./reviewed.ts";

describe("the summary", () => {
  test("says times, totals, incidents and what is missing on its first page", () => {
    const text = frame(reviewed()).join("\n");
    expect(text).toMatch(/bypass +1:35:00 08:15–09:50/);
    expect(text).toMatch(/clamp +1:10:00 08:20–09:30/);
    expect(text).toMatch(/reperfusion +20:00/);
    expect(text).toMatch(/urine +400 mL/);
    expect(text).toMatch(/given +950 mL in 2/);
    expect(text).toContain("09:24 chatter in the venous line");
    expect(text).toMatch(/missing +\d+ of \d+ items/);
    expect(text).toMatch(/put right +1, struck out 0/);
    expect(text).toContain("ALLERGIES: latex");
  });

  test("shows a dash for what was not recorded", () => {
    const text = frame(reviewed(typed([]))).join("\n");
    expect(text).toMatch(/bypass +–/);
    expect(text).toMatch(/urine +–/);
    expect(text).toContain("none recorded");
  });

  test("shows the lowest and the highest with their times", () => {
    expect(frame(reviewed(), LARGE).join("\n")).toMatch(/MAP mmHg +55 08:40 – 70 09:20/);
  });

  test("turns its pages over, and after the last comes to the first", () => {
    const pages = [0, 1, 2, 3, 4, 5, 6].map((count) =>
      frame(reviewed(RUN, ...Array.from({ length: count }, () => ({ name: "down" }) as const))),
    );
    const count = Number(/page 1 of (\d)/.exec(pages[0]?.join("\n") ?? "")?.[1]);
    expect(count).toBeGreaterThan(1);
    expect(pages[count]).toEqual(pages[0]);
    expect(frame(reviewed(RUN, { name: "up" }))).toEqual(pages[count - 1]);
  });

  test("says that an open case is open, and as of when", () => {
    expect(frame(reviewed()).join("\n")).toMatch(/open, last entry +2026-03-04 09:50/);
  });
});

describe("the timeline", () => {
  test("points at the chosen row and says which it is of how many", () => {
    const rows = frame(reviewed(RUN, TAB, { name: "down" }));
    expect(rows.join("\n")).toContain("2 in 16 entries");
    expect(rows.filter((row) => row.includes("▸"))).toEqual([expect.stringContaining("heparin")]);
  });

  test("says what it was narrowed by", () => {
    const text = frame(reviewed(RUN, TAB, "fd/350\n")).join("\n");
    expect(text).toContain('1 in 1 of 16 entries · arrest doses · "350"');
  });

  test("shows the letters of the kinds, and what is being searched", () => {
    expect(frame(reviewed(RUN, TAB, "f")).join("\n")).toContain(" d arrest doses");
    expect(frame(reviewed(RUN, "/dose")).join("\n")).toContain(" search: dose");
  });

  test("says so when nothing is like that", () => {
    expect(frame(reviewed(RUN, "/nothing such\n")).join("\n")).toContain("No entry is like that");
  });
});

test("the history shows what was written, by whom, when and why it was put right, and what stands", () => {
  const rows = frame(reviewed(RUN, "/350\n", ENTER)).map((row) => row.trim());
  const from = rows.findIndex((row) => row.startsWith("as written"));
  expect(rows.slice(from, from + 8)).toEqual([
    "as written  by AB on 2026-03-04 at 09:22:00",
    "09:22:00 dose given · 300 mL · right ostium",
    "typed: d300 r",
    "put right  #12 by AB on 2026-03-04 at 09:23:00",
    "to: 09:22:00 dose given · 350 mL · right ostium",
    "because: misheard",
    "stands",
    "09:22:00 dose given · 350 mL · right ostium",
  ]);
});

describe("the trends", () => {
  test("read every value at the cursor, with its age, and say how long bypass and clamp had been on", () => {
    const text = frame(reviewed(RUN, TAB, TAB, PAGE_UP, { name: "right" })).join("\n");
    expect(text).toContain("── 09:21:00 · bypass on 1:06:00 · clamp on 1:01:00");
    expect(text).toContain("MAP 70 mmHg · 1 min");
    expect(text).toContain("flow 4.40 L/min · 1 min");
    expect(text).toContain("ACT – s");
  });

  test("a value that had grown too old by then is a dash", () => {
    const text = frame(reviewed(RUN, TAB, TAB, PAGE_UP, { name: "left" })).join("\n");
    expect(text).toContain("── 09:19:00 ·");
    expect(text).toContain("MAP – mmHg");
  });

  test("stand side by side, more of them where there is room", () => {
    const count = (size: Size) =>
      frame(reviewed(RUN, TAB, TAB), size)
        .filter((row) => row.includes("MAP mmHg"))
        .join("")
        .match(/mmHg|°C|L\/min/g);
    expect(frame(reviewed(RUN, TAB, TAB)).find((row) => row.includes("MAP mmHg"))).toContain("flow L/min");
    expect(count(LARGE)?.length).toBeGreaterThan(count(USUAL)?.length ?? 0);
  });

  test("are drawn without braille where the terminal is old", () => {
    const review = reviewed(RUN, TAB, TAB);
    const view = viewOf({ screen: "review", review, home: null }, at("12:00"));
    const screen = createElement(Screen, { view, size: USUAL });
    const text = renderToString(createElement(LookContext, { value: "ascii" }, screen), { columns: 80 });
    expect(text).not.toMatch(/[\u2800-\u28ff━▾╎┈]/);
    expect(text).toContain("= clamp");
  });
});

describe("the trends of the run", () => {
  const TABS = "\t\t\t\t\t\t\t";
  const toTrends = (keys: readonly Key[] = []) => {
    const model = [...TABS].reduce(
      (before) => (before.panel === "trends" ? before : typedInRun(before, [TAB], at("09:51"))),
      openModel(RUN),
    );
    return runView(typedInRun(model, keys, at("09:51")), at("09:51"));
  };

  test("show the last hour, and with an arrow the whole run", () => {
    const hour = frameOf(toTrends(), USUAL).join("\n");
    expect(hour).toContain("trends · last hour");
    expect(hour).toContain("MAP mmHg");
    expect(hour).toContain("temperature °C");
    expect(hour).not.toContain("08:15");
    const run = frameOf(toTrends([{ name: "left" }]), USUAL).join("\n");
    expect(run).toContain("trends · whole run");
    expect(frameOf(toTrends([{ name: "left" }, { name: "right" }]), USUAL).join("\n")).toBe(hour);
  });

  test("mark the clamp and the doses", () => {
    const marks = frameOf(toTrends([{ name: "left" }]), LARGE).find((row) => /━▾/.test(row));
    expect(marks).toMatch(/━.*▾/);
  });
});

test("the last row always shows the keys of the mode, whole, and the way out", () => {
  const modes = [[], [TAB], [TAB, TAB], [TAB, "f"], ["/"], [TAB, ENTER]] as const;
  for (const keys of modes) {
    for (const size of [USUAL, LARGE]) {
      const last = frame(reviewed(RUN, ...keys), size).at(-1) ?? "";
      expect(last).toMatch(/q leave$|Esc (clear|as before)/);
    }
  }
  expect(frame(reviewed(RUN)).at(-1)).toBe(" Tab view  ↑↓ page  / find  r read again  q leave");
});

test("which case of how many, and the keys to the others, are in the first row", () => {
  const other = { ...RUN, id: "case-0002", label: "another" };
  const first = (keys: string) => frame(press(beginReview([RUN, other]).review, keys))[0];
  expect(first("")).toMatch(/invented .* , \. case 1 of 2$/);
  expect(first(".")).toMatch(/another .* , \. case 2 of 2$/);
});

test("a case that cannot be read has its name and the whole sentence, and the keys that still do something", () => {
  const fault = `The case cannot be opened: ${"the file was cut short in the middle of a value, ".repeat(3)}so.`;
  const { review } = beginReview([{ path: "/cases/one.json" }, RUN]);
  expect(frame(review).join("\n")).toContain("Reading …");
  const rows = frame(caseAbsent(review, "/cases/one.json", fault).review);
  expect(rows.join(" ").replace(/\s+/g, " ")).toContain(fault);
  expect(rows.join("\n")).toContain("/cases/one.json");
  expect(rows.at(-1)).toBe(" r read again  q leave");
});
