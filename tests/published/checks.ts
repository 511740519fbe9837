/**
 * What is held against the outside: each value beside the page it was read on. A row is added here; how its figure is
 * reckoned stands in reckoned.ts, by the words of `what`.
 */
import type { What } from "./reckoned.ts";

/**
 * `Q` read on the page cited; `Q2` read on a page that reports the work cited; `C` computed twice from a published
 * formula; `M` from memory or common practice: no source at all, and never to be shown as one.
 */
export type Sureness = "Q" | "Q2" | "C" | "M";

export type Check = {
  readonly id: string;
  readonly what: What;
  readonly inputs: Readonly<Record<string, number | string>>;
  readonly expected: number;
  readonly tolerance: number;
  readonly source: string;
  readonly sureness: Sureness;
};

const EXACT = 1e-9;
const FOUR_DECIMALS = 0.000_05;

const DUBOIS =
  "computed from the published formula: Du Bois D, Du Bois EF. Arch Intern Med 1916;17:863–871, as printed at pynomo.org";
const MOSTELLER =
  "computed from the published formula: Mosteller RD. N Engl J Med 1987;317:1098, as listed at globalrph.com";
const HAYCOCK =
  "computed from the published formula: Haycock GB et al. J Pediatr 1978;93:62–66, as listed at globalrph.com";

const surfaces: readonly (readonly [
  kg: number,
  cm: number,
  dubois: number,
  mosteller: number,
  haycock: number,
])[] = [
  [3.5, 50, 0.2086, 0.2205, 0.2244],
  [5, 58, 0.2703, 0.2838, 0.2883],
  [10, 75, 0.4373, 0.4564, 0.4635],
  [15, 98, 0.6307, 0.639, 0.6409],
  [20, 115, 0.8004, 0.7993, 0.7971],
  [30, 135, 1.0682, 1.0607, 1.0564],
  [40, 150, 1.3029, 1.291, 1.2858],
  [50, 150, 1.4325, 1.4434, 1.4497],
  [60, 160, 1.6221, 1.633, 1.6405],
  [65, 165, 1.7161, 1.726, 1.7337],
  [70, 170, 1.8097, 1.8181, 1.8257],
  [70, 175, 1.8481, 1.8447, 1.8468],
  [80, 180, 1.9964, 2.0, 2.0066],
  [100, 180, 2.195, 2.2361, 2.2624],
  [120, 170, 2.2756, 2.3805, 2.4396],
];

const surfaceChecks: readonly Check[] = surfaces.flatMap(([kg, cm, dubois, mosteller, haycock]) =>
  (
    [
      ["dubois", dubois, DUBOIS],
      ["mosteller", mosteller, MOSTELLER],
      ["haycock", haycock, HAYCOCK],
    ] as const
  ).map(([formula, expected, source]) => ({
    id: `surface-${formula}-${kg}-${cm}`,
    what: "body surface, m²",
    inputs: { formula, kg, cm },
    expected,
    tolerance: FOUR_DECIMALS,
    source,
    sureness: "C",
  })),
);

const PARTS = "computed from the published formula: total × crystalloid part / sum of parts";
const ONE_TO_FOUR =
  "ratio of 1:4: Matte GS, del Nido PJ. J Extra Corpor Technol 2012;44:98–103 (erratum 2013;45:262)";

const parts: readonly (readonly [
  solution: string,
  ml: number,
  expected: number,
  source: string,
  sureness: Sureness,
])[] = [
  ["blood-4-1", 1000, 200, PARTS, "C"],
  ["blood-4-1", 750, 150, PARTS, "C"],
  ["blood-8-1", 900, 100, PARTS, "C"],
  ["one-to-four", 1000, 800, ONE_TO_FOUR, "Q"],
  ["one-to-four", 600, 480, ONE_TO_FOUR, "Q"],
  ["crystalloid", 1800, 1800, PARTS, "C"],
];

const arrestChecks: readonly Check[] = parts.map(([solution, ml, expected, source, sureness]) => ({
  id: `crystalloid-of-${solution}-${ml}`,
  what: "crystalloid part of arrest solution, mL",
  inputs: { solution, ml },
  expected,
  tolerance: EXACT,
  source,
  sureness,
}));

const AT_TARGET =
  "computed from the published target of 480 s, met at the target: Anesth Analg 2018;126:413–424, at Medscape 898528_5";

const actChecks: readonly Check[] = [
  [479, 0],
  [480, 1],
  [481, 1],
].map(([seconds = 0, expected = 0]) => ({
  id: `act-${seconds}`,
  what: "whether an ACT meets its target (1 or 0)",
  inputs: { seconds, target: 480 },
  expected,
  tolerance: EXACT,
  source: AT_TARGET,
  sureness: "C",
}));

const ONE_TO_HUNDRED =
  "1 mg for 100 IU of the loading dose: J Extra Corpor Technol 2025;57:188–193; Barlow, Bedside notebook";
const LOWER_RATIOS = "computed from the published ratios 1.0 and 0.8: J Extra Corpor Technol 2023;55:105–111";

const coagulationChecks: readonly Check[] = [
  {
    id: "protamine-on-first",
    what: "protamine on the first heparin, mg",
    inputs: { load: 21_000, later: 10_000, ratio: 1 },
    expected: 210,
    tolerance: EXACT,
    source: ONE_TO_HUNDRED,
    sureness: "Q",
  },
  {
    id: "protamine-on-total",
    what: "protamine on all heparin, mg",
    inputs: { load: 21_000, later: 10_000, ratio: 1 },
    expected: 310,
    tolerance: EXACT,
    source: "computed from the published formula: 1 mg for 100 IU, on the total",
    sureness: "C",
  },
  {
    id: "protamine-ratio-0.8",
    what: "protamine on the first heparin, mg",
    inputs: { load: 21_000, later: 0, ratio: 0.8 },
    expected: 168,
    tolerance: EXACT,
    source: LOWER_RATIOS,
    sureness: "C",
  },
  {
    id: "protamine-ratio-0.6",
    what: "protamine on the first heparin, mg",
    inputs: { load: 21_000, later: 0, ratio: 0.6 },
    expected: 126,
    tolerance: EXACT,
    source: "computed from the published formula: 0.6 mg for 100 IU",
    sureness: "C",
  },
  {
    id: "protamine-most",
    what: "most protamine, mg",
    inputs: { load: 21_000, later: 0 },
    expected: 546,
    tolerance: EXACT,
    source: "from memory: not above 2.6 mg for 100 IU",
    sureness: "M",
  },
  {
    id: "heparin-4-mg-kg",
    what: "heparin typed in mg, IU",
    inputs: { mg: 280 },
    expected: 28_000,
    tolerance: EXACT,
    source: "common practice, no source: 100 IU/mg",
    sureness: "M",
  },
  {
    id: "dose-every-20-min",
    what: "minutes from the end of a 4:1 dose to the next",
    inputs: {},
    expected: 20,
    tolerance: EXACT,
    source: "common practice, no source: about every 20 minutes",
    sureness: "M",
  },
  {
    id: "dose-after-90-min",
    what: "minutes from the end of a 1:4 dose to the next",
    inputs: {},
    expected: 90,
    tolerance: EXACT,
    source: "a single dose protects for about 90 min: PMC8828514",
    sureness: "Q",
  },
];

const LIBRARY = "@lhncbc/ucum-lhc 7.1.10";

const conversionChecks: readonly Check[] = [
  {
    id: "kpa-40",
    what: "shown in kPa",
    inputs: { mmHg: 40 },
    expected: 5.332_88,
    tolerance: 0.000_01,
    source: LIBRARY,
    sureness: "Q",
  },
  {
    id: "kpa-100",
    what: "shown in kPa",
    inputs: { mmHg: 100 },
    expected: 13.3322,
    tolerance: FOUR_DECIMALS,
    source: LIBRARY,
    sureness: "Q",
  },
  {
    id: "glucose-180",
    what: "glucose typed in mg/dL, mmol/L",
    inputs: { mgPerDl: 180 },
    expected: 9.991,
    tolerance: 0.0005,
    source: `${LIBRARY}, molar mass 180.156`,
    sureness: "Q",
  },
  {
    id: "lactate-1",
    what: "lactate typed in mg/dL, mmol/L",
    inputs: { mgPerDl: 9.008 },
    expected: 1,
    tolerance: EXACT,
    source: "computed from the published molar mass of 90.08",
    sureness: "C",
  },
  {
    id: "haemoglobin-85",
    what: "haemoglobin typed in g/L, g/dL",
    inputs: { gPerL: 85 },
    expected: 8.5,
    tolerance: EXACT,
    source: "computed from the published definition of the litre: 10 g/L are 1 g/dL",
    sureness: "C",
  },
];

export const CHECKS: readonly Check[] = [
  ...surfaceChecks,
  ...arrestChecks,
  ...actChecks,
  ...coagulationChecks,
  ...conversionChecks,
];
