/** Units as people write them, and the UCUM codes they mean. */

/** By what was written, in small letters. */
export const UNIT_SLIPS: Readonly<Record<string, string>> = {
  mcg: "ug",
  µg: "ug",
  μg: "ug",
  microgram: "ug",
  gram: "g",
  iu: "[IU]",
  ie: "[IU]",
  unit: "[IU]",
  units: "[IU]",
  ml: "mL",
  cc: "mL",
  meq: "meq",
  mmhg: "mm[Hg]",
};
