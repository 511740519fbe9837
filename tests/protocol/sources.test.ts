/** On whose word each number of the shipped protocols stands: a citation only where the page was read. */
import { describe, expect, test } from "vitest";
import { COMMON_PRACTICE, FROM_MEMORY } from "../../src/protocol/decision.ts";
import { SHIPPED } from "../../src/protocol/shipped.ts";

type Sourced = { place: string; key: string; value: number; source: unknown };

/** Every number with the source of its own group. */
function numbersOf(json: unknown, place = ""): Sourced[] {
  if (typeof json !== "object" || json === null) return [];
  const { source, ratioSource } = json as { source?: unknown; ratioSource?: unknown };
  return Object.entries(json).flatMap(([key, value]) => {
    if (typeof value === "number") return [{ place, key, value, source: ratioSource ?? source }];
    const step = Array.isArray(json) ? ((value as { id?: string; fluid?: string }).id ?? key) : key;
    return numbersOf(value, place === "" ? step : `${place} ${step}`);
  });
}

/** Numbers read on a page, with words of the citation they may carry. All others may carry none. */
const READ: readonly (readonly [place: RegExp, values: readonly number[], citation: string])[] = [
  [/^body bloodVolumeBands/, [65], "Haemodilution Calculations"],
  [
    /^body bloodVolumeBands/,
    [10, 85, 20, 80, 30, 75, 40, 70, 65],
    "blood volume by weight (perfusion-course",
  ],
  [/^body flowIndex$/, [2.4], "Perfusion 2011;26:45–50"],
  [/^body flowByWeight/, [3, 200, 10, 150, 15, 125, 30, 100, 55, 75, 65], "flow by weight (perfusion-course"],
  [/^coagulation heparinPerKg$/, [400], "300–400 IU/kg"],
  [/^coagulation actForBypass$/, [480], "STS/SCA/AmSECT guideline 2018"],
  [/^coagulation actRecheck$/, [30], "Bedside notebook"],
  [/^coagulation protamineRatio$/, [1], "J Extra Corpor Technol 2025;57:188–193"],
  [/^solutions one-to-four$/, [1, 4], "Matte GS, del Nido PJ"],
  [/^solutions one-to-four interval$/, [90], "PMC8828514"],
  [/^temperature (outletLimit|coolingGradient)$/, [37, 10], "PMC4631211"],
  [/^temperature warm/, [10, 4, 30, 0.5], "guidelinecentral.com/guideline/19523"],
  [/^oxygen perGram$/, [1.34], "RCEM"],
  [/^oxygen dissolved$/, [0.003], "Postgraduate Medical Journal"],
  [/^watch meanPressure$/, [50, 80], "EACTS/EACTA/EBCP guideline 2019"],
  [/^watch oxygenDelivery$/, [280], "GIFT"],
  [/^watch glucose$/, [4, 10], "Baker RA et al. J Extra Corpor Technol 2012;44:26–33"],
  [/^watch carbonDioxide$/, [35, 45], "Baker RA et al. J Extra Corpor Technol 2012;44:26–33"],
  [/^watch gasEvery$/, [30], "Bedside notebook"],
  [/^fluidsIn red-cells haematocrit$/, [60], "Haemodilution Calculations"],
  [/^fluidsIn whole-blood haematocrit$/, [35], "Haemodilution Calculations"],
  [/^circuit packedCellHaematocrit$/, [60], "Haemodilution Calculations"],
];

const isRead = ({ place, value, source }: Sourced) =>
  READ.some(
    ([where, values, words]) => where.test(place) && values.includes(value) && String(source).includes(words),
  );

const isOwnWord = ({ source }: Sourced) =>
  source === COMMON_PRACTICE || source === FROM_MEMORY || String(source).startsWith("computed ");

describe.each(SHIPPED.map((protocol) => [protocol.name, protocol] as const))(
  "the %s protocol",
  (_, protocol) => {
    const numbers = numbersOf({ ...protocol, version: undefined });

    test("says of every number where it was taken from", () => {
      expect(numbers.length).toBeGreaterThan(60);
      expect(numbers.filter(({ source }) => typeof source !== "string" || source === "")).toEqual([]);
    });

    test("cites a page only for what was read on it, and calls the rest practice, memory or computed", () => {
      expect(numbers.filter((number) => !isRead(number) && !isOwnWord(number))).toEqual([]);
    });

    test.each([
      ["protamine cap", "coagulation protamineCap"],
      ["20 mL/kg of 1:4", "solutions one-to-four first perKg"],
      ["its ceiling", "solutions one-to-four first ceiling"],
      ["urine target", "watch urinePerKgPerHour"],
      ["extraction limit", "watch oxygenExtraction"],
    ])("does not pass off as published what nobody read: %s", (_, place) => {
      const found = numbers.filter((number) => number.place === place);
      expect(found.map(({ source }) => source)).toEqual([FROM_MEMORY]);
    });
  },
);

test("what was found in adults says so in the paediatric protocol", () => {
  const [, paediatric] = SHIPPED;
  const guideline = paediatric?.temperature.outletLimit.source ?? "";
  expect(guideline).toContain("(found in adults)");
});
