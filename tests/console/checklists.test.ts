/** Keys in the checklists: every tick is an entry with its own time. */
import { describe, expect, test } from "vitest";
import { openModel } from "../../src/console/model.ts";
import { checkStates, openItems } from "../../src/figures/checks.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import { standing } from "../../src/record/standing.ts";
import { DOWN, ESCAPE, entriesOf, press, UP } from "../helpers/console-keys.ts";
import { at, openedCase } from "../helpers/typed-case.ts";

const [list] = adultProtocol.checklists;
if (!list) throw new Error("the adult protocol has no checklist");
const [first, second] = list.items.map(({ id }) => id);

const model = openModel(openedCase());
const opened = press(model, `c${list.letter}`, at("10:00"));
const ticks = (after: typeof model) =>
  entriesOf(after)
    .slice(1)
    .map((entry) =>
      entry.kind === "check" ? [entry.item, entry.state, entry.at.slice(11, 19)] : entry.kind,
    );

describe("a tick", () => {
  test("is an entry with its time, and goes on to the next item", () => {
    const done = press(press(opened, " ", at("10:01")), "n", at("10:02"));
    expect(ticks(done)).toEqual([
      [first, "done", "10:01:00"],
      [second, "not-applicable", "10:02:00"],
    ]);
  });

  test("by Enter is done, and twice is one entry", () => {
    const twice = press(press(press(opened, "\n", at("10:01")), [UP], at("10:01")), "\n", at("10:02"));
    expect(ticks(twice)).toEqual([[first, "done", "10:01:00"]]);
  });

  test("can be taken back", () => {
    const open = press(press(press(opened, " ", at("10:01")), [UP], at("10:01")), "u", at("10:02"));
    expect(ticks(open)).toEqual([
      [first, "done", "10:01:00"],
      [first, "open", "10:02:00"],
    ]);
    const { facts } = standing(open.file.entries);
    expect(openItems(list, checkStates(facts)).length).toBe(list.items.length);
  });

  test("leaves so many items open", () => {
    const { facts } = standing(press(opened, " n", at("10:01")).file.entries);
    expect(openItems(list, checkStates(facts)).length).toBe(list.items.length - 2);
  });
});

describe("moving", () => {
  test("stays within the list", () => {
    const top = press(opened, [UP, UP], at("10:00"));
    const end = press(opened, Array(list.items.length + 5).fill(DOWN), at("10:00"));
    expect([top.mode, end.mode]).toMatchObject([{ item: 0 }, { item: list.items.length - 1 }]);
  });

  test("goes back by Esc, first to the lists and then to the console", () => {
    expect(press(opened, [ESCAPE], at("10:00")).mode).toMatchObject({ name: "checklist", list: null });
    expect(press(opened, [ESCAPE, ESCAPE], at("10:00")).mode).toEqual({ name: "plain" });
  });

  test("opens a list by its letter or by Enter, and no list by another letter", () => {
    expect(press(model, "c\n", at("10:00")).mode).toMatchObject({ list: list.id });
    const unknown = press(model, "c=", at("10:00"));
    expect(unknown.mode).toMatchObject({ list: null });
    expect(unknown.notice).toBe('"=" is no checklist here: type a letter of the list.');
  });
});
