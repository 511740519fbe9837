/** Resistance of the vessels, from pressure and flow. */
import { fixed, plain } from "../format/number.ts";
import { derived } from "./derived.ts";
import type { Figure } from "./figure.ts";

const SOURCE = "foxlinton.org cardiac-output teaching pages, indexed values";

/**
 * Systemic vascular resistance in dyn·s·cm⁻⁵ = 80 × (MAP − CVP) / flow; pressures in mmHg, flow in L/min. Nothing for
 * a pump that stands still.
 */
export const systemicResistance = (mean: Figure, centralVenous: Figure, flow: Figure): Figure =>
  derived("dyn.s/cm5", [mean, centralVenous, flow], (map, cvp, rate) => ({
    value: rate > 0 ? (80 * (map - cvp)) / rate : null,
    working: rate > 0 ? `80 × (${plain(map)} − ${plain(cvp)}) mmHg / ${fixed(rate, 2)} L/min` : "no flow",
    source: SOURCE,
  }));

/** The same indexed, in dyn·s·cm⁻⁵·m²: resistance TIMES surface in m², for it falls as the body grows. */
export const systemicResistanceIndex = (resistance: Figure, surface: Figure): Figure =>
  derived("dyn.s.m2/cm5", [resistance, surface], (svr, area) => ({
    value: svr * area,
    working: `${fixed(svr)} dyn·s·cm⁻⁵ × ${plain(area)} m²`,
    source: SOURCE,
  }));
