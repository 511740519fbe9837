/** Oxygen: content, delivery, uptake, the flow a target asks for, and what lay below a threshold. */
import { belowThreshold, stepHold } from "../../src/figures/below-threshold.ts";
import { KPA_PER_MMHG } from "../../src/figures/conversions.ts";
import { type Figure, known } from "../../src/figures/figure.ts";
import {
  flowForDelivery,
  oxygenContent,
  oxygenDeliveryIndex,
  oxygenExtraction,
  oxygenUptakeIndex,
} from "../../src/figures/oxygen.ts";
import { type Check, group, type Section } from "./check.ts";

const FORMULA = "1.34, 1.36 and 1.39 × Hb × saturation + 0.003 × pO2, as the pages of 4.1 print them";
const RCEM = "RCEM Learning, Oxygen in human physiology – examples";
const E_SAFE = "e-SAFE Anaesthesia, session 05_02";
const PMJ =
  "Postgraduate Medical Journal, worked table; it prints 950.6 mL/min from a content rounded to 19.4";

/** mL/dL for each mmHg, from mL/L for each kPa. */
export const perMmHg = (perKpa: number): number => (perKpa / 10) * KPA_PER_MMHG;
const mmHg = (kPa: number): number => kPa / KPA_PER_MMHG;

const constants = (perGram: number, dissolved = 0.003) => ({
  perGram: { value: perGram },
  dissolved: { value: dissolved },
});
const content = (hb: number, saturation: number, pO2: number, perGram = 1.34): Figure =>
  oxygenContent(hb, saturation, pO2, constants(perGram));
const perLitre = (hb: number, saturation: number, kPa: number): number =>
  (oxygenContent(hb, saturation, mmHg(kPa), constants(1.34, perMmHg(0.23))).value ?? Number.NaN) * 10;

const index = (value: number) => known(value, "L/min/m2", "given");
const surface = (value: number) => known(value, "m2", "given");
/** What goes to or is taken by the whole body, from the index of a flow in L/min for a surface in m². */
const inAll = (ofIndex: (flowIndex: Figure) => Figure, flow: number, area: number): number =>
  (ofIndex(index(flow / area)).value ?? Number.NaN) * area;

const PATIENTS = [
  { hb: 8.5, saturation: 100, delivered: [287.8, 291.8, 298.0] },
  { hb: 8.2, saturation: 99, delivered: [275.5, 279.4, 285.2] },
  { hb: 8.0, saturation: 99, delivered: [269.1, 272.9, 278.6] },
];
const HUFNER = [1.34, 1.36, 1.39];

const deliveries: Check[] = PATIENTS.flatMap(({ hb, saturation, delivered }) =>
  delivered.map((expected, i) => {
    const perGram = HUFNER[i] as number;
    return {
      id: `delivery-${hb}-at-${perGram}`,
      what: "oxygen delivery index",
      inputs: `Hb ${hb} g/dL, ${saturation} %, 200 mmHg, 2.4 L/min/m², ${perGram} mL/g`,
      expected,
      tolerance: 0.05,
      source: FORMULA,
      sureness: "C",
      got: () => oxygenDeliveryIndex(content(hb, saturation, 200, perGram), index(2.4)),
    };
  }),
);

const NEEDED = [
  { target: 280, indexes: [2.806, 2.473, 2.335, 2.212, 2.0] },
  { target: 272, indexes: [2.725, 2.403, 2.269, 2.148, 1.943] },
  { target: 300, indexes: [3.006, 2.65, 2.502, 2.37, 2.143] },
];
const HAEMOGLOBINS = [7, 8, 8.5, 9, 10];

const needed: Check[] = NEEDED.flatMap(({ target, indexes }) =>
  indexes.map((expected, i) => {
    const hb = HAEMOGLOBINS[i] as number;
    return {
      id: `index-for-${target}-at-${hb}`,
      what: "flow index for an oxygen delivery",
      inputs: `DO2i ${target}, Hb ${hb} g/dL, 100 %, 200 mmHg`,
      expected,
      tolerance: 0.0005,
      source: FORMULA,
      sureness: "C",
      got: () => flowForDelivery(target, surface(1), content(hb, 100, 200)),
    };
  }),
);

const arterial = content(9, 99, 250);
const venous = content(9, 75, 40);

type Series = readonly (readonly [minute: number, value: number])[];
const SHORT: Series = [
  [0, 300],
  [1, 270],
  [2, 260],
  [3, 280],
  [4, 290],
];
const LONG: Series = [
  [0, 310],
  [5, 285],
  [10, 270],
  [15, 250],
  [20, 268],
  [25, 282],
  [30, 300],
];
const MINUTE = 60_000;

/** What lay below a threshold where each value holds until the next, and the last until `end`; times in minutes. */
export function below(series: Series, end: number, threshold: number) {
  const samples = series.map(([minute, value]) => ({ at: minute * MINUTE, value, until: end * MINUTE }));
  const run = [{ from: 0, to: end * MINUTE }];
  return belowThreshold(stepHold(samples), threshold, run, end * MINUTE);
}
export const shortSeries = () => below(SHORT, 5, 280);

const AREA = "definition: Mukaida H et al. J Thorac Cardiovasc Surg 2019; step-hold computed";

export const oxygen: Section = {
  name: "oxygen",
  checks: [
    ...group({ what: "oxygen content, mL/L", source: RCEM, sureness: "Q" }, [
      ["rcem-97", "Hb 150 g/L, 97 %, 10 kPa", 197, 0.5, () => perLitre(15, 97, 10)],
      ["rcem-100", "Hb 150 g/L, 100 %, 50 kPa", 212.5, 0.05, () => perLitre(15, 100, 50)],
      ["rcem-venous", "Hb 150 g/L, 57 %, 4.5 kPa", 116, 0.5, () => perLitre(15, 57, 4.5)],
    ]),
    ...group({ what: "content in mL/L, delivery in mL/min", source: E_SAFE, sureness: "Q" }, [
      ["e-safe-content", "Hb 150 g/L, 98 %, 13 kPa", 200, 0.5, () => perLitre(15, 98, 13)],
      [
        "e-safe-delivery",
        "the same at 5 L/min",
        1000,
        0.5,
        () =>
          inAll(
            (one) => oxygenDeliveryIndex(known(perLitre(15, 98, 13) / 10, "mL/dL", "given"), one),
            5,
            1.7,
          ),
      ],
    ]),
    ...group({ what: "content in mL/dL", source: PMJ, sureness: "Q" }, [
      ["pmj-content", "Hb 14.0 g/dL, 98 %, 13.3 kPa, 1.39 mL/g", 19.4, 0.05, () => pmjContent()],
    ]),
    ...group({ what: "delivery in mL/min", source: PMJ, sureness: "C" }, [
      [
        "pmj-delivery",
        "the same at 4.9 L/min, unrounded",
        949.1,
        0.05,
        () => inAll((one) => oxygenDeliveryIndex(pmjContent(), one), 4.9, 1.7),
      ],
    ]),
    ...group({ what: "oxygen capacity", source: "usmlestrike.com, Oxygen content of blood", sureness: "Q" }, [
      ["capacity", "Hb 15 g/dL, nothing dissolved", 20.1, 0.05, () => content(15, 100, 0)],
    ]),
    ...group({ what: "constant of dissolved oxygen, mL/L for each kPa", source: FORMULA, sureness: "C" }, [
      ["dissolved-0.003", "0.003 mL/dL for each mmHg", 0.225, 0.0001, () => 0.03 / KPA_PER_MMHG],
      ["dissolved-0.0031", "0.0031 mL/dL for each mmHg", 0.2325, 0.0001, () => 0.031 / KPA_PER_MMHG],
    ]),
    ...group({ what: "oxygen content", source: FORMULA, sureness: "C" }, [
      ["content-1.34", "Hb 8.5 g/dL, 100 %, 200 mmHg", 11.99, 0.0005, () => content(8.5, 100, 200, 1.34)],
      ["content-1.36", "the same at 1.36 mL/g", 12.16, 0.0005, () => content(8.5, 100, 200, 1.36)],
      ["content-1.39", "the same at 1.39 mL/g", 12.415, 0.0005, () => content(8.5, 100, 200, 1.39)],
    ]),
    ...deliveries,
    ...group({ what: "all of it", source: FORMULA, sureness: "C" }, [
      ["arterial", "Hb 9 g/dL, 99 %, 250 mmHg", 12.6894, 0.000_05, () => arterial],
      ["venous", "Hb 9 g/dL, 75 %, 40 mmHg", 9.165, 0.000_05, () => venous],
      [
        "do2",
        "the same at 4.8 L/min",
        609.09,
        0.005,
        () => inAll((one) => oxygenDeliveryIndex(arterial, one), 4.8, 2),
      ],
      ["do2i", "the same for 2.0 m²", 304.55, 0.005, () => oxygenDeliveryIndex(arterial, index(2.4))],
      [
        "vo2",
        "the same",
        169.17,
        0.005,
        () => inAll((one) => oxygenUptakeIndex(arterial, venous, one), 4.8, 2),
      ],
      ["vo2i", "the same for 2.0 m²", 84.59, 0.005, () => oxygenUptakeIndex(arterial, venous, index(2.4))],
      ["o2er", "the same", 27.77, 0.005, () => oxygenExtraction(arterial, venous)],
    ]),
    ...needed,
    ...group({ what: "flow for an oxygen delivery", source: FORMULA, sureness: "C" }, [
      [
        "flow-for-280",
        "1.82 m², Hb 8.0 g/dL, 99 %, 200 mmHg",
        4.545,
        0.0005,
        () => flowForDelivery(280, surface(1.82), content(8, 99, 200)),
      ],
    ]),
    ...group({ what: "area below a threshold, mL/m²", source: AREA, sureness: "C" }, [
      ["short-280", "0:300 1:270 2:260 3:280 4:290, end 5", 30, 1e-9, () => shortSeries().area],
      ["long-272", "0:310 … 30:300 every 5 min", 140, 1e-9, () => below(LONG, 30, 272).area],
      ["long-280", "the same below 280", 260, 1e-9, () => below(LONG, 30, 280).area],
      ["long-300", "the same below 300", 725, 1e-9, () => below(LONG, 30, 300).area],
    ]),
    ...group({ what: "minutes below a threshold", source: AREA, sureness: "C" }, [
      ["short-minutes", "as above, below 280", 2, 1e-9, () => shortSeries().minutes],
      ["long-minutes-272", "as above, below 272", 15, 1e-9, () => below(LONG, 30, 272).minutes],
      ["long-minutes-280", "as above, below 280", 15, 1e-9, () => below(LONG, 30, 280).minutes],
      ["long-minutes-300", "as above, below 300", 25, 1e-9, () => below(LONG, 30, 300).minutes],
    ]),
  ],
};

function pmjContent(): Figure {
  return oxygenContent(14, 98, mmHg(13.3), constants(1.39, 0.0225 * KPA_PER_MMHG));
}
