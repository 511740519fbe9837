/** Units: between what is shown and what is kept. */
import { toCanonical, toShown } from "../../src/figures/conversions.ts";
import { advisesOnGas } from "./advised.ts";
import { group, type Section } from "./check.ts";

const LIBRARY = "@lhncbc/ucum-lhc 7.1.10";
const MOLAR = `${LIBRARY}, molar mass 180.156`;
const CEILING = "4 to 10 mmol/L: Baker RA et al. J Extra Corpor Technol 2012;44:26–33";

const glucose = (value: number) => advisesOnGas({ glucose: value }, /^glucose-/);

export const units: Section = {
  name: "units",
  checks: [
    ...group({ what: "kPa and mmHg", source: LIBRARY, sureness: "Q" }, [
      ["kpa-1", "1 kPa typed: mmHg", 7.500_638, 0.000_000_5, () => toCanonical("oxygen", "kPa", 1)],
      ["mmhg-40", "40 mmHg shown: kPa", 5.332_88, 0.000_005, () => toShown("carbonDioxide", "kPa", 40)],
      ["mmhg-100", "100 mmHg shown: kPa", 13.3322, 0.000_05, () => toShown("oxygen", "kPa", 100)],
    ]),
    ...group({ what: "glucose", source: MOLAR, sureness: "Q" }, [
      ["glucose-180", "180 mg/dL typed: mmol/L", 9.991, 0.0005, () => toCanonical("glucose", "mg/dL", 180)],
      ["glucose-10", "10 mmol/L shown: mg/dL", 180.16, 0.005, () => toShown("glucose", "mg/dL", 10)],
      ["glucose-4", "4 mmol/L shown: mg/dL", 72.06, 0.005, () => toShown("glucose", "mg/dL", 4)],
    ]),
    ...group({ what: "lactate", source: "molar mass 90.08", sureness: "C" }, [
      ["lactate", "1 mmol/L shown: mg/dL", 9.008, 1e-9, () => toShown("lactate", "mg/dL", 1)],
      ["lactate-typed", "9.008 mg/dL typed: mmol/L", 1, 1e-9, () => toCanonical("lactate", "mg/dL", 9.008)],
    ]),
    ...group({ what: "haemoglobin", source: "10 g/L are 1 g/dL", sureness: "C" }, [
      ["haemoglobin-85", "85 g/L typed: g/dL", 8.5, 1e-9, () => toCanonical("haemoglobin", "g/L", 85)],
      ["haemoglobin-12.5", "12.5 g/dL shown: g/L", 125, 1e-9, () => toShown("haemoglobin", "g/L", 12.5)],
    ]),
    ...group({ what: "whether a glucose is advised upon", source: CEILING, sureness: "Q" }, [
      ["glucose-at-3.9", "3.9 mmol/L", true, 0, () => glucose(3.9)],
      ["glucose-at-4", "4 mmol/L", false, 0, () => glucose(4)],
      ["glucose-at-10", "10 mmol/L", false, 0, () => glucose(10)],
      ["glucose-at-10.1", "10.1 mmol/L", true, 0, () => glucose(10.1)],
    ]),
  ],
};
