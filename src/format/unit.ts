/** UCUM unit codes, as the record keeps them, in the words a person reads. */
import { lookUp } from "./look-up.ts";

const SHOWN: Record<string, string> = {
  "[IU]": "IU",
  "[IU]/kg": "IU/kg",
  "[IU]/mL": "IU/mL",
  "[IU]/mg": "IU/mg",
  "mg/(100.[IU])": "mg/100 IU",
  "kg/m2": "kg/m²",
  "mL/dL/mm[Hg]": "mL/dL/mmHg",
  "mm[Hg]": "mmHg",
  Cel: "°C",
  // A difference of two temperatures.
  K: "°C",
  "K/min": "°C/min",
  ug: "µg",
  "umol/L": "µmol/L",
  m2: "m²",
  "L/min/m2": "L/min/m²",
  "mL/min/m2": "mL/min/m²",
  "mL/m2": "mL/m²",
  "dyn.s/cm5": "dyn·s·cm⁻⁵",
  "dyn.s.m2/cm5": "dyn·s·cm⁻⁵·m²",
  "[pH]": "",
  "1": "",
  "[Ch]": "Fr",
};

/** `mm[Hg]` reads `mmHg`; a code that reads well already is left as it is. */
export const unitText = (ucum: string): string => lookUp(SHOWN, ucum) ?? ucum;
