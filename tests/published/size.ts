/** Body surface and index. */
import { bodySurface, type SurfaceFormula } from "../../src/figures/body-surface.ts";
import { known } from "../../src/figures/figure.ts";
import { flowIndexOf } from "../../src/figures/flow-plan.ts";
import { type Check, group, type Section } from "./check.ts";

const PAPERS: Readonly<Record<SurfaceFormula, string>> = {
  dubois: "Du Bois D, Du Bois EF. Arch Intern Med 1916;17:863–871",
  mosteller: "Mosteller RD. N Engl J Med 1987;317:1098",
  haycock: "Haycock GB, Schwartz GJ, Wisotsky DH. J Pediatr 1978;93:62–66",
};

const area = (formula: SurfaceFormula, weight: number, height: number): number =>
  bodySurface(formula, weight, height).value ?? Number.NaN;

const TABLE: readonly (readonly [
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
  [80, 180, 1.9964, 2, 2.0066],
  [100, 180, 2.195, 2.2361, 2.2624],
  [120, 170, 2.2756, 2.3805, 2.4396],
];

const reference: Check[] = TABLE.flatMap(([kg, cm, dubois, mosteller, haycock]) =>
  Object.entries({ dubois, mosteller, haycock }).map(([name, expected]): Check => {
    const formula = name as SurfaceFormula;
    return {
      id: `${formula}-${kg}-${cm}`,
      what: `body surface, ${formula}`,
      inputs: `${kg} kg, ${cm} cm`,
      expected,
      tolerance: 0.000_05,
      source: PAPERS[formula],
      sureness: "C",
      got: () => bodySurface(formula, kg, cm),
    };
  }),
);

export const size: Section = {
  name: "size",
  checks: [
    ...group({ what: "body surface, Mosteller", source: PAPERS.mosteller, sureness: "C" }, [
      ["exactly-two", "80 kg, 180 cm", 2, 1e-12, () => bodySurface("mosteller", 80, 180)],
    ]),
    ...group(
      { what: "body surface, DuBois", source: `${PAPERS.dubois}; a web page prints 1.87`, sureness: "C" },
      [["not-1.87", "70 kg, 175 cm", 1.848, 0.0005, () => bodySurface("dubois", 70, 175)]],
    ),
    ...group({ what: "flow index", source: "foxlinton.org cardiac-output teaching pages", sureness: "Q" }, [
      [
        "index",
        "5 L/min, 1.7 m²",
        2.9,
        0.05,
        () => flowIndexOf(known(5, "L/min", "given"), known(1.7, "m2", "given")),
      ],
    ]),
    ...group({ what: "order of the formulas", source: "the three formulas", sureness: "C" }, [
      [
        "small-child",
        "15 kg, 98 cm: DuBois < Mosteller < Haycock",
        true,
        0,
        () => ascends(area("dubois", 15, 98), area("mosteller", 15, 98), area("haycock", 15, 98)),
      ],
      [
        "larger-child",
        "20 kg, 115 cm: Haycock < Mosteller < DuBois",
        true,
        0,
        () => ascends(area("haycock", 20, 115), area("mosteller", 20, 115), area("dubois", 20, 115)),
      ],
      [
        "newborn",
        "kg-50-cm:-that-dubois-lies-below-haycock",
        7,
        0.5,
        () => 100 * (1 - area("dubois", 3.5, 50) / area("haycock", 3.5, 50)),
      ],
    ]),
    ...reference,
  ],
};

const ascends = (...values: readonly number[]): boolean =>
  values.every((value, i) => i === 0 || value > (values[i - 1] as number));
