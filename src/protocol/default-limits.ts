/** Limits, constants and units that both shipped protocols share. */
import { CITED } from "./citations.ts";
import type { Protocol } from "./protocol.ts";

export const defaultShownUnits: Protocol["shown"] = {
  heparin: "[IU]",
  gasPressure: "mm[Hg]",
  glucose: "mmol/L",
  haemoglobin: "g/dL",
  lactate: "mmol/L",
};

export const defaultOxygen: Protocol["oxygen"] = {
  perGram: { value: 1.34, source: CITED.oxygenPerGram },
  dissolved: { value: 0.003, source: CITED.oxygenDissolved },
};

/** The published temperature rules; `as` says what is to be added to their citation. */
export const defaultTemperature = (as = (citation: string) => citation): Protocol["temperature"] => ({
  outletLimit: { value: 37, source: as(CITED.temperature) },
  coolingGradient: { value: 10, source: as(CITED.temperature) },
  warmingGradientCold: { value: 10, source: as(CITED.warming) },
  warmingGradientWarm: { value: 4, source: as(CITED.warming) },
  warmFrom: { value: 30, source: as(CITED.warming) },
  warmingRate: { value: 0.5, source: as(CITED.warming) },
});
