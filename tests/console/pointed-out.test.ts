/** What is pointed out before bypass goes on or off; the entry is taken all the same. */
import { expect, test } from "vitest";
import { openModel } from "../../src/console/model.ts";
import { meaning } from "../../src/console/open-line.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import type { CaseFile } from "../../src/record/case.ts";
import { entriesOf, press } from "../helpers/console-keys.ts";
import { at, openedCase, typed, typedOn } from "../helpers/typed-case.ts";

const noLists = { ...adultProtocol, checklists: [] };
const before = adultProtocol.checklists.find(({ id }) => id === "before-bypass");
if (!before) throw new Error("the adult protocol has no checklist before bypass");

const said = (file: CaseFile, keys = "b"): string => meaning(press(openModel(file), keys, at("09:00"))).text;

test("open items of the lists before bypass, until they are ticked", () => {
  const primed = typed(["08:00 v1400f"]);
  const open = said(primed);
  expect(open).toContain(`before bypass ${before.items.length} of ${before.items.length}`);
  const ticked = typedOn(primed, [`08:10 c${before.letter} ${before.items[0]?.id}`]);
  expect(said(ticked)).toContain(`before bypass ${before.items.length - 1} of ${before.items.length}`);
});

test("a prime that is not recorded, before the first run alone", () => {
  expect(said(openedCase(noLists))).toMatch(/^Enter writes: bypass on .* · No prime is recorded \(k\)\.$/);
  expect(said(typed(["08:00 k prime=1400"], noLists))).not.toContain("prime");
  expect(said(typed(["08:00 b", "08:10 b"], noLists))).not.toContain("prime");
  expect(said(typed(["08:00 b"], noLists))).not.toContain("prime");
});

test("and Enter writes bypass on all the same", () => {
  const written = press(openModel(openedCase()), "b\n", at("09:00"));
  expect(entriesOf(written).at(-1)).toMatchObject({ kind: "span", what: "bypass", state: "on" });
});
