/** Flow before the run: at an index, at a temperature, for a lean mass, and the index that a flow makes. */
import { plain } from "../format/number.ts";
import type { Band } from "../protocol/body.ts";
import type { Decision } from "../protocol/decision.ts";
import { derived } from "./derived.ts";
import { type Figure, missing } from "./figure.ts";
import { bandFor } from "./full-flow.ts";

/** Flow in L/min at an index in L/min/m² for a surface in m². */
export const flowAtIndex = (index: Decision, surface: Figure): Figure =>
  derived("L/min", [surface], (area) => ({
    value: index.value * area,
    working: `${plain(index.value)} L/min/m² × ${plain(area)} m²`,
    source: index.source,
  }));

/** Flow in L/min at a temperature in °C by a table of indexes; a step of the table includes its upper bound. */
export function flowAtTemperature(
  celsius: number | undefined,
  surface: Figure,
  table: readonly Band[] | undefined,
): Figure {
  if (celsius === undefined) return missing("L/min", "no temperature planned");
  const step = table && bandFor(table, celsius);
  if (!step) return missing("L/min", `no table of the protocol gives an index for ${plain(celsius)} °C`);
  const flow = flowAtIndex(step, surface);
  return flow.value === null ? flow : { ...flow, working: `at ${plain(celsius)} °C ${flow.working}` };
}

/** The index in L/min/m² that a flow in L/min makes for a surface in m². */
export const flowIndexOf = (flow: Figure, surface: Figure): Figure =>
  derived("L/min/m2", [flow, surface], (rate, area) => ({
    value: rate / area,
    working: `${plain(rate)} L/min / ${plain(area)} m²`,
  }));
