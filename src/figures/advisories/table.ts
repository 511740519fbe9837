/** The table of advisories: advice with its source, never an alarm, never a block. */
import type { Advisory } from "./advisory.ts";
import { arrestAdvisories } from "./arrest.ts";
import { bloodAdvisories } from "./blood.ts";
import { coagulationAdvisories } from "./coagulation.ts";
import { pressureAndFlowAdvisories } from "./pressure-and-flow.ts";
import { recordAdvisories } from "./record.ts";
import { temperatureAdvisories } from "./temperature.ts";
import { volumeAdvisories } from "./volumes.ts";

export const ADVISORIES: readonly Advisory[] = [
  ...coagulationAdvisories,
  ...arrestAdvisories,
  ...temperatureAdvisories,
  ...pressureAndFlowAdvisories,
  ...bloodAdvisories,
  ...volumeAdvisories,
  ...recordAdvisories,
];
