/** What the record lacks, against the published content of a perfusion record. */
import { describe, expect, test } from "vitest";
import { INVENTED } from "../../src/commands/invented/index.ts";
import { completenessOf } from "../../src/figures/completeness.ts";
import { closed } from "../../src/record/entries-case.ts";
import { runAt } from "../helpers/typed-case.ts";
import { caseOf } from "../samples/samples.ts";
import { entry, gas, readings, type Step, told } from "./told-case.ts";

const states = (steps: readonly Step[]) =>
  new Map(completenessOf(runAt(told(steps), "23:00")).map(({ item, state }) => [item, state]));

const stateOf = (item: string, ...steps: Step[]) => states(steps).get(item);

describe("an item", () => {
  test.each<[item: string, there: Step[], lacking: Step[]]>([
    ["number or name of the patient", [entry("07:10", { kind: "patient", number: "17" })], []],
    [
      "height and weight, for the body surface",
      [entry("07:10", { kind: "patient", height: 170, weight: 70 })],
      [entry("07:10", { kind: "patient", weight: 70 })],
    ],
    [
      "surgeon",
      [entry("07:10", { kind: "team", people: [{ role: "surgeon", who: "CD" }] })],
      [entry("07:10", { kind: "team", people: [{ role: "scrub nurse", who: "CD" }] })],
    ],
    [
      "oxygenator with its lot",
      [entry("07:10", { kind: "circuit", components: [{ component: "oxygenator", lot: "L-1" }] })],
      [entry("07:10", { kind: "circuit", components: [{ component: "oxygenator" }] })],
    ],
    [
      "venous reservoir with its lot, where separate",
      [entry("07:10", { kind: "circuit", components: [{ component: "reservoir", lot: "L-1" }] })],
      [entry("07:10", { kind: "circuit", components: [{ component: "reservoir" }] })],
    ],
    ["bypass off", ["09:00 b", "10:00 b"], ["09:00 b"]],
    ["clamp off", ["09:00 x", "10:00 x"], ["09:00 x"]],
    ["pump flow", ["09:00 b", readings("09:10", { flow: 4.5 })], ["09:00 b"]],
    [
      "temperature of the patient",
      ["09:00 b", readings("09:10", { rectalTemperature: 34 })],
      ["09:00 b", readings("09:10", { arterialTemperature: 34 })],
    ],
    ["volume of every dose", ["09:10 d 300", "09:40 d 300"], ["09:10 d 300", "09:40 d"]],
    ["route of every dose", ["09:10 d 300 a"], ["09:10 d 300 a", "09:40 d 300"]],
    ["pressure of every dose", ["09:10 d 300 p80"], ["09:10 d 300"]],
    ["prime", ["08:00 v 1300 c", "09:00 b"], ["09:00 b", "09:10 v 500 c"]],
    ["urine", ["09:00 b", "09:30 u 50"], ["09:00 b"]],
    ["numbers of the units of blood", ["09:00 v 250 r #123 /AB"], ["09:00 v 250 r"]],
    ["ACT before heparin", ["08:30 a 118", "08:40 h 28000"], ["08:40 h 28000", "08:50 a 480"]],
    [
      "ACT after heparin and before bypass",
      ["08:40 h 28000", "08:50 a 490", "09:00 b"],
      ["08:40 h 28000", "09:00 b", "09:01 a 490"],
    ],
    [
      "ACT on bypass, where it outlasts the time to the next",
      ["09:00 b", "09:29 a 490", "09:31 b"],
      ["08:59 a 490", "09:00 b", "09:31 b"],
    ],
    ["protamine", ["09:00 b", "10:00 b", "10:10 p 200"], ["09:00 b", "10:00 b"]],
    ["ACT after protamine", ["10:10 p 200", "10:20 a 120"], ["10:00 a 500", "10:10 p 200"]],
    [
      "pH, pCO2 and pO2",
      ["09:00 b", gas("09:10", { ph: 7.4, carbonDioxide: 40, oxygen: 200 })],
      ["09:00 b", gas("09:10", { ph: 7.4 })],
    ],
    [
      "summary at every handover of the pump",
      [entry("09:00", { kind: "operator", operator: "EF", summary: ["S on bypass"] })],
      [entry("09:00", { kind: "operator", operator: "EF" })],
    ],
  ])("%s is present, or missing", (item, there, lacking) => {
    expect([stateOf(item, ...there), stateOf(item, ...lacking)]).toEqual(["present", "missing"]);
  });

  test.each([
    "bypass off",
    "clamp off",
    "circulatory arrest on and off",
    "pump flow",
    "central venous pressure, where measured",
    "volume of every dose",
    "numbers of the units of blood",
    "protamine",
    "ACT on bypass, where it outlasts the time to the next",
    "pH, pCO2 and pO2",
    "incidents",
    "vent with its lot",
    "venous reservoir with its lot, where separate",
  ])("%s does not apply to a run that had none", (item) => {
    expect(stateOf(item)).toBe("not-applicable");
  });

  test("that was struck out is missing again", () => {
    expect(stateOf("pump flow", "09:00 b", readings("09:10", { flow: 4.5 }), "09:12 z #3 ! wrong")).toBe(
      "missing",
    );
  });
});

describe("the list", () => {
  const list = completenessOf(runAt(told([]), "12:00"));

  test("names each item once", () => {
    const items = list.map(({ item }) => item);
    expect(items).toEqual([...new Set(items)]);
  });

  test("gives edition and number, and says of every item that it is from memory or quoted", () => {
    for (const { standard } of list)
      expect(standard).toMatch(/^AmSECT 2013, Standard \d+( and \d+)*[;,].*(from memory|as quoted)/);
  });

  test("can be kept in the closing entry", () => {
    const kept = list.map(({ item, state, standard }) => ({ item, state, standard }));
    expect(closed.shape.completeness.safeParse(kept).success).toBe(true);
  });

  test("finds most of what a careful case holds", () => {
    for (const script of INVENTED) {
      const found = completenessOf(runAt(caseOf(script), "23:00")).map(({ state }) => state);
      const present = found.filter((state) => state === "present").length;
      const missing = found.filter((state) => state === "missing").length;
      expect(present, script.id).toBeGreaterThan(3 * missing);
    }
  });
});
