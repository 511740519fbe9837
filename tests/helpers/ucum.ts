/** A public library of UCUM units, which brings no types. */
import { createRequire } from "node:module";

type Library = {
  validateUnitString(unit: string): { status: "valid" | "invalid" | "error" };
  convertUnitTo(
    from: string,
    value: number,
    to: string,
    /** In g/mol, between moles and grams. */
    options?: { molecularWeight: number },
  ): { status: string; toVal: number | null };
};

const load = createRequire(import.meta.url);

export const ucum = (
  load("@lhncbc/ucum-lhc") as { UcumLhcUtils: { getInstance(): Library } }
).UcumLhcUtils.getInstance();
