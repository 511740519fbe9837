/** Full flow: as the plan decides it, else from the index and the size of the patient. */
import { fixed, plain } from "../format/number.ts";
import type { Band } from "../protocol/body.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { surfaceOf } from "./body-surface.ts";
import { type Figure, known, missing } from "./figure.ts";
import type { Patient, Plan } from "./patient.ts";

/** The step of a table that a value falls in; a step includes its upper bound. */
export const bandFor = (bands: readonly Band[], value: number): Band | undefined =>
  bands.find(({ upTo }) => upTo === null || value <= upTo);

/** Full flow in L/min. */
export function fullFlow(patient: Patient, plan: Plan, protocol: Protocol): Figure {
  if (plan.fullFlow !== undefined) return known(plan.fullFlow, "L/min", "as planned");
  const { fullFlowBy, flowByWeight, flowIndex } = protocol.body;
  if (fullFlowBy === "weight" && flowByWeight && plan.flowIndex === undefined)
    return flowAtWeight(patient.weight, flowByWeight);
  const area = surfaceOf({ patient, protocol });
  if (area.value === null) return missing("L/min", area.working);
  const index = plan.flowIndex ?? flowIndex.value;
  return known(
    index * area.value,
    "L/min",
    `${plain(index)} L/min/m² × ${fixed(area.value, 2)} m²`,
    plan.flowIndex === undefined ? flowIndex.source : "as planned",
  );
}

/** Full flow in L/min by a table of mL/kg/min over weight in kg; a step includes its upper bound. */
export function flowAtWeight(weight: number | undefined, bands: readonly Band[]): Figure {
  if (weight === undefined) return missing("L/min", "no weight recorded");
  const band = bandFor(bands, weight);
  if (!band) return missing("L/min", `no step of the weight table holds ${plain(weight)} kg`);
  return known(
    (band.value * weight) / 1000,
    "L/min",
    `${plain(band.value)} mL/kg/min × ${plain(weight)} kg`,
    band.source,
  );
}
