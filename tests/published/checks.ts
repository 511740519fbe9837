/** All published checks, by section. A row is added to the section it belongs to. */
import { arrest } from "./arrest.ts";
import { blood } from "./blood.ts";
import type { Check, Section } from "./check.ts";
import { coagulation } from "./coagulation.ts";
import { flow } from "./flow.ts";
import { haemodilution } from "./haemodilution.ts";
import { oxygen } from "./oxygen.ts";
import { size } from "./size.ts";
import { temperature } from "./temperature.ts";
import { traps } from "./traps.ts";
import { units } from "./units.ts";
import { vectors } from "./vectors.ts";
import { vessels } from "./vessels.ts";

export const SECTIONS: readonly Section[] = [
  traps,
  size,
  blood,
  haemodilution,
  oxygen,
  flow,
  coagulation,
  temperature,
  arrest,
  vessels,
  units,
  vectors,
];

/** Every check, with its section's name before its own. */
export const CHECKS: readonly Check[] = SECTIONS.flatMap(({ name, checks }) =>
  checks.map((check) => ({ ...check, id: `${name}/${check.id}` })),
);
