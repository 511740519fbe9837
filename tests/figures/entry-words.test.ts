/** An entry in words, as the log, the entry line and the reports show it. */
import { expect, test } from "vitest";
import { entryWords, fractionText } from "../../src/figures/entry-words.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import type { Draft, Kind } from "../../src/record/entry.ts";
import { EVERY_KIND } from "../helpers/every-kind.ts";

const said = (draft: Draft, protocol = adultProtocol): string => {
  const { subject, says } = entryWords(draft, protocol);
  return `${subject}: ${says}`;
};

const WORDS: { readonly [K in Kind]: string } = {
  opened: "case: opened · by AB · theatre 2",
  patient: "patient: female · 70 kg · 170 cm · number 17 · born 1956-02-29",
  plan: "plan: index 2.4 L/min/m² · aortic valve",
  team: "team: surgeon CD",
  circuit: "circuit: oxygenator lot L-1",
  operator: "pump: handed to EF",
  span: "span: cerebral perfusion on · antegrade",
  moment: "moment: heart de-aired",
  flow: "flow: 3/4 of full",
  target: "target: 32 °C",
  reminder: "remind: at 10:20 · blood gas",
  check: "check: done · before bypass · heparin-given",
  incident: "INCIDENT: chatter in the venous line",
  note: "note: surgeon asks for 50 mmHg",
  acknowledged: "advice: act low answered · more heparin is in",
  dose: "dose: given · 300 mL · right ostium · 80 mmHg · 5 °C",
  volume: "out: bag reads 450 mL · urine",
  level: "level: 800 mL",
  drug: "heparin: 28 000 IU",
  act: "ACT: 512 s",
  readings: "readings: flow 4.50, MAP 62",
  gas: "gas: arterial · pH 7.38, pO2 210",
  "reminder-done": "remind: done (#11)",
  amend: "put right: #16: 350 mL",
  void: "struck out: #13 · wrong patient",
  clock: "clock: system clock stepped by -3600 s; the record's time did not",
  closed: "case: closed · by EF",
  reopened: "case: reopened · by EF · urine forgotten",
};

test.each(EVERY_KIND.map((draft) => [draft.kind, draft] as const))("%s", (kind, draft) => {
  expect(said(draft)).toBe(WORDS[kind]);
});

test("heparin counted in milligrams is said in both units", () => {
  const inMg = { ...adultProtocol, shown: { ...adultProtocol.shown, heparin: "mg" as const } };
  expect(said({ kind: "drug", name: "heparin", amount: 28_000, unit: "[IU]" }, inMg)).toBe(
    "heparin: 280 mg = 28 000 IU",
  );
});

test("what the protocol does not know keeps the name it was given", () => {
  expect(said({ kind: "moment", what: "bell-rung" })).toBe("moment: bell-rung");
  expect(said({ kind: "volume", direction: "in", fluid: "cream", ml: 5 })).toBe("in: 5 mL · cream");
  expect(said({ kind: "drug", name: "tea", amount: 2, unit: "constructor" })).toContain("tea 2 constructor");
});

test.each([
  [{ ml: 350 }, "350 mL"],
  [{ seconds: 468 }, "468 s"],
  [{ litresPerMinute: 4.5 }, "4.5 L/min"],
  [{ fraction: 0.5, litresPerMinute: null }, "1/2 of full"],
  [{ celsius: 32 }, "32 °C"],
  [{ pressure: 80, temperature: 8 }, "80 mmHg, 8 °C"],
  [{ bagTotal: 450, ml: null }, "bag reads 450 mL"],
  [{ route: "coronary-sinus" }, "coronary sinus"],
  [{ values: { flow: 4.5, meanPressure: 62, haematocrit: 27 } }, "flow 4.50, MAP 62, Hct 27.0 %"],
  [{ at: "2026-03-04T09:02:00.000+01:00", amount: 28_000 }, "time 09:02:00, amount 28000"],
  [{ checkedBy: "KM" }, "checked by KM"],
  [{ checkedBy: null }, "without checked by"],
] as const)("a correction to %j is told as %s", (changes, words) => {
  expect(said({ kind: "amend", target: "e11", changes })).toBe(`put right: #11: ${words}`);
});

test("a correction that only takes a field away says which", () => {
  expect(said({ kind: "amend", target: "e3", changes: { route: null } })).toBe(
    "put right: #3: without route",
  );
});

test("a fraction of full reads as people order it", () => {
  expect([1, 0.75, 0.5, 0.25, 0.9].map(fractionText)).toEqual([
    "full",
    "3/4 of full",
    "1/2 of full",
    "1/4 of full",
    "90 % of full",
  ]);
});

test("a tick is told in the words of the list, and one that was taken back says so", () => {
  const said = (state: "done" | "not-applicable" | "open") => {
    const draft = { kind: "check", checklist: "before-bypass", item: "allergies", state } as const;
    return entryWords(draft, adultProtocol).says;
  };
  expect(said("not-applicable")).toBe("not applicable · before bypass · Allergies known to the pump team");
  expect(said("open")).toBe("opened again · before bypass · Allergies known to the pump team");
});
