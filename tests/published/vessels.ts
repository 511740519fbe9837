/** Resistance of the vessels, and what tubing holds. */
import { known } from "../../src/figures/figure.ts";
import { tubingVolume } from "../../src/figures/prime.ts";
import { systemicResistance, systemicResistanceIndex } from "../../src/figures/vascular.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import { type Check, group, type Section } from "./check.ts";

const LINTON = "foxlinton.org cardiac-output teaching pages, indexed values";
const CYLINDER = "π/4 × bore²";
const MEASURED =
  "Caneo LF et al. Braz J Cardiovasc Surg 2018, doi 10.21470/1678-9741-2018-0074, 120 cm of line";

const resistance = (map: number, cvp: number, flow: number) =>
  systemicResistance(
    known(map, "mm[Hg]", "given"),
    known(cvp, "mm[Hg]", "given"),
    known(flow, "L/min", "given"),
  );
const indexed = (svr: number, area: number) =>
  systemicResistanceIndex(known(svr, "dyn.s/cm5", "given"), known(area, "m2", "given"));

const bore = (id: string): number => adultProtocol.circuit.tubing.find((line) => line.id === id)?.boreMm ?? 0;
const holds = (id: string, metres: number) => tubingVolume(bore(id), metres);

const BORES: readonly (readonly [id: string, inches: string, metre: number, foot: number, line: number])[] = [
  ["bore-3-16", "3/16 in", 17.814, 5.43, 21.38],
  ["bore-1-4", "1/4 in", 31.669, 9.653, 38.0],
  ["bore-3-8", "3/8 in", 71.256, 21.719, 85.51],
  ["bore-1-2", "1/2 in", 126.677, 38.611, 152.01],
];

const geometry: Check[] = BORES.flatMap(([id, inches, metre, foot, line]) =>
  group({ what: "what tubing holds", source: CYLINDER, sureness: "C" }, [
    [`${id}-metre`, `${inches}, 1 m`, metre, 0.0005, () => holds(id, 1)],
    [`${id}-foot`, `${inches}, 1 ft`, foot, 0.0005, () => holds(id, 0.3048)],
    [`${id}-line`, `${inches}, 1.2 m`, line, 0.005, () => holds(id, 1.2)],
  ]),
);

/** What was measured lies within 2.65 % of what a cylinder holds; as a part of what was measured that is this. */
const NEAR = 0.0265 / (1 - 0.0265);

export const vessels: Section = {
  name: "vessels and tubing",
  checks: [
    ...group({ what: "vascular resistance", source: LINTON, sureness: "Q" }, [
      ["resistance", "MAP 95, CVP 5 mmHg, 5 L/min", 1440, 0, () => resistance(95, 5, 5)],
      ["resistance-half", "the same at 2.5 L/min", 2880, 0, () => resistance(95, 5, 2.5)],
      ["index", "1440 × 1.7 m²", 2448, 1e-9, () => indexed(1440, 1.7)],
      ["index-half", "2880 × 0.85 m²", 2448, 1e-9, () => indexed(2880, 0.85)],
    ]),
    ...group({ what: "vascular resistance", source: "80 × (MAP − CVP) / flow", sureness: "C" }, [
      ["on-bypass", "MAP 70, CVP 5 mmHg, 4.8 L/min", 1083.3, 0.05, () => resistance(70, 5, 4.8)],
      ["no-venous-pressure", "MAP 60, CVP 0 mmHg, 4.8 L/min", 1000, 1e-9, () => resistance(60, 0, 4.8)],
      ["no-flow", "MAP 60, CVP 5 mmHg, no flow", null, 0, () => resistance(60, 5, 0)],
    ]),
    ...group({ what: "dyn·s·cm⁻⁵ in 1 mmHg·min/L", source: "@lhncbc/ucum-lhc 7.1.10", sureness: "Q" }, [
      ["eighty", "1 mmHg at 1 L/min, ours rounded to 80", 79.993, 0.0075, () => resistance(1, 0, 1)],
    ]),
    ...geometry,
    ...group({ what: "what a measured line holds", source: MEASURED, sureness: "Q" }, [
      ["measured-3-16", "two of 3/16 in", 42, 42 * NEAR, () => 2 * (holds("bore-3-16", 1.2).value ?? 0)],
      ["measured-1-4", "one of 1/4 in", 37, 37 * NEAR, () => holds("bore-1-4", 1.2)],
      ["measured-1-4-two", "two of 1/4 in", 74, 74 * NEAR, () => 2 * (holds("bore-1-4", 1.2).value ?? 0)],
      ["measured-3-8", "one of 3/8 in", 84, 84 * NEAR, () => holds("bore-3-8", 1.2)],
    ]),
  ],
};
