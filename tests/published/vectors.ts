/** A short list of vectors, one for each formula, as another program could be fed with them. */
import { allowableBloodLoss } from "../../src/figures/blood-loss.ts";
import { bloodVolumeByNadler } from "../../src/figures/blood-volume.ts";
import { bodySurface } from "../../src/figures/body-surface.ts";
import { KPA_PER_MMHG, toCanonical, toShown } from "../../src/figures/conversions.ts";
import { known } from "../../src/figures/figure.ts";
import { oxygenContent, oxygenDeliveryIndex, oxygenExtraction } from "../../src/figures/oxygen.ts";
import { crystalloidOf, solutionDose } from "../../src/figures/planned-doses.ts";
import { tubingVolume } from "../../src/figures/prime.ts";
import { bloodForPrime, bloodOnTop } from "../../src/figures/red-cells.ts";
import { systemicResistance, systemicResistanceIndex } from "../../src/figures/vascular.ts";
import { type Check, group, type Section } from "./check.ts";
import { mixed, unitsToConcentrate } from "./haemodilution.ts";
import { perMmHg, shortSeries } from "./oxygen.ts";

const TEACHING = "Haemodilution Calculations, teaching notes at perfusion.com.au; mass balance";
const LINTON = "foxlinton.org cardiac-output teaching pages, indexed values";

const mL = (value: number) => known(value, "mL", "given");
const percent = (value: number) => known(value, "%", "given");
const mmHg = (value: number) => known(value, "mm[Hg]", "given");

const constants = (perGram: number, dissolved = 0.003) => ({
  perGram: { value: perGram },
  dissolved: { value: dissolved },
});

const need = {
  volume: mL(7000),
  haematocrit: mixed(5000, 25, 2000, 0),
  wanted: 25,
  product: 60,
};
const delivery = (perGram: number) =>
  oxygenDeliveryIndex(oxygenContent(8.2, 99, 200, constants(perGram)), known(2.4, "L/min/m2", "given"));
const crystalloid = (blood: number, crystalloidParts: number) =>
  crystalloidOf(mL(1000), { id: "given", name: "given", blood, crystalloid: crystalloidParts });
const inLitres = ({ value }: { value: number | null }) => (value ?? Number.NaN) / 1000;

/** By the first word of the id: what it is of, and where the formula was published. */
const FORMULAS: Readonly<Record<string, readonly [what: string, source: string]>> = {
  bsa: ["body surface in m²", "Du Bois 1916, Mosteller 1987, Haycock 1978: the three papers"],
  bv: ["blood volume in L", "Nadler SB, Hidalgo JU, Bloch T. Surgery 1962;51:224–232"],
  abl: ["allowable blood loss in mL", "Iowa Head and Neck Protocols; ASA Monitor 2020;84(9):21"],
  dil: ["haematocrit of a mixture in %", TEACHING],
  prc: ["red cells for 25 % in mL", TEACHING],
  hemocon: ["units to concentrate", TEACHING],
  cao2: ["oxygen content", "RCEM Learning (mL/L); Postgraduate Medical Journal, worked table (mL/dL)"],
  do2i: ["oxygen delivery index in mL/min/m²", "RCEM Learning; Postgraduate Medical Journal"],
  o2er: ["oxygen extraction in %", "Fick: (arterial − venous content) / arterial content"],
  area: ["below a threshold", "Mukaida H et al. J Thorac Cardiovasc Surg 2019, by step-hold"],
  svr: ["vascular resistance in dyn·s·cm⁻⁵", LINTON],
  svri: ["vascular resistance index in dyn·s·cm⁻⁵·m²", LINTON],
  tubing: ["what tubing holds in mL", "π/4 × bore²"],
  cpg: ["crystalloid of arrest solution in mL", "total × crystalloid / (blood + crystalloid)"],
  capped: ["dose with a ceiling in mL", "the lesser of mL/kg × weight and the ceiling"],
  glucose: ["glucose in mmol/L", "molar mass 180.156"],
  kpa: ["pressure in kPa", "@lhncbc/ucum-lhc 7.1.10"],
};

type Vector = readonly [id: string, inputs: string, expected: number, tolerance: number, got: Check["got"]];

const vector = (...row: Vector): Check[] => {
  const [what, source] = FORMULAS[row[0].split("-")[0] as string] as readonly [string, string];
  return group({ what, source, sureness: "C" }, [row]);
};

export const vectors: Section = {
  name: "vectors",
  checks: [
    ...vector("bsa-mosteller-1", "65 kg, 165 cm", 1.726, 0.0005, () => bodySurface("mosteller", 65, 165)),
    ...vector("bsa-dubois-1", "65 kg, 165 cm", 1.7161, 0.0005, () => bodySurface("dubois", 65, 165)),
    ...vector("bsa-haycock-1", "3.5 kg, 50 cm", 0.2244, 0.0005, () => bodySurface("haycock", 3.5, 50)),
    ...vector("bsa-mosteller-2", "80 kg, 180 cm", 2, 1e-9, () => bodySurface("mosteller", 80, 180)),
    ...vector("bv-nadler-m", "male, 80 kg, 1.80 m", 5.3191, 0.0005, () =>
      inLitres(bloodVolumeByNadler({ sex: "male", weight: 80, height: 180 })),
    ),
    ...vector("bv-nadler-f", "female, 80 kg, 1.80 m", 4.9065, 0.0005, () =>
      inLitres(bloodVolumeByNadler({ sex: "female", weight: 80, height: 180 })),
    ),
    ...vector("abl-1", "400 mL, 36 to 25 %", 122.2, 0.1, () => allowableBloodLoss(mL(400), percent(36), 25)),
    ...vector("abl-2", "180 mL, 40 to 33 %", 31.5, 0.01, () => allowableBloodLoss(mL(180), percent(40), 33)),
    ...vector("dil-1", "5000 mL at 43.9 %, 500 mL at 0 %", 39.909, 0.005, () => mixed(5000, 43.9, 500, 0)),
    ...vector("dil-2", "5000 mL at 25 %, 500 mL at 35 %", 25.909, 0.005, () => mixed(5000, 25, 500, 35)),
    ...vector("prc-replace", "5000 mL at 25 %, prime 2000 mL, cells 60 %", 833.33, 0.05, () =>
      bloodForPrime(need, mL(2000)),
    ),
    ...vector("prc-ontop", "the same, on top", 1428.57, 0.05, () => bloodOnTop(need)),
    ...vector("hemocon-units", "7000 mL, 25 to 15 %, 250 mL at 60 %", 6.222, 0.005, unitsToConcentrate),
    ...vector("cao2-si", "Hb 150 g/L, 97 %, 10 kPa, 0.23", 197.27, 0.05, () => {
      const content = oxygenContent(15, 97, toCanonical("oxygen", "kPa", 10), constants(1.34, perMmHg(0.23)));
      return (content.value ?? Number.NaN) * 10;
    }),
    ...vector("cao2-pmj", "Hb 14.0 g/dL, 98 %, 13.3 kPa, 0.0225", 19.37, 0.005, () =>
      oxygenContent(14, 98, toCanonical("oxygen", "kPa", 13.3), constants(1.39, 0.0225 * KPA_PER_MMHG)),
    ),
    ...vector("do2i-134", "Hb 8.2 g/dL, 99 %, 200 mmHg, 2.4", 275.5, 0.05, () => delivery(1.34)),
    ...vector("do2i-136", "the same at 1.36", 279.4, 0.05, () => delivery(1.36)),
    ...vector("do2i-139", "the same at 1.39", 285.2, 0.05, () => delivery(1.39)),
    ...vector("o2er", "Hb 9 g/dL, 99 % 250 mmHg, 75 % 40 mmHg", 27.774, 0.01, () =>
      oxygenExtraction(oxygenContent(9, 99, 250, constants(1.34)), oxygenContent(9, 75, 40, constants(1.34))),
    ),
    ...vector("area-step", "below 280: 300 270 260 280 290, end 5", 30, 1e-9, () => shortSeries().area),
    ...vector("area-step-minutes", "the same", 2, 1e-9, () => shortSeries().minutes),
    ...vector("svr", "MAP 95, CVP 5, 5 L/min", 1440, 1e-9, () =>
      systemicResistance(mmHg(95), mmHg(5), known(5, "L/min", "given")),
    ),
    ...vector("svri", "1440, 1.7 m²", 2448, 1e-9, () =>
      systemicResistanceIndex(known(1440, "dyn.s/cm5", "given"), known(1.7, "m2", "given")),
    ),
    ...vector("tubing-38", "3/8 in, 1.2 m", 85.51, 0.05, () => tubingVolume(9.525, 1.2)),
    ...vector("cpg-41", "1000 mL of 4:1", 200, 1e-9, () => crystalloid(4, 1)),
    ...vector("cpg-14", "1000 mL of 1:4", 800, 1e-9, () => crystalloid(1, 4)),
    ...vector("capped-one-to-four", "70 kg, 20 mL/kg, at the most 1000 mL", 1000, 0, () =>
      solutionDose({ perKg: { value: 20 }, ceiling: { value: 1000 } }, { weight: 70 }),
    ),
    ...vector("glucose", "180 mg/dL", 9.991, 0.001, () => toCanonical("glucose", "mg/dL", 180)),
    ...vector("kpa", "40 mmHg", 5.3329, 0.0002, () => toShown("oxygen", "kPa", 40)),
  ],
};
