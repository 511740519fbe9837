/** Advisories about arterial pressure, and about oxygen delivered and extracted. */
import { deliveryInputs, extractionInputs, type Inputs, liveOxygen } from "../live-oxygen.ts";
import { latestReading } from "../measured.ts";
import type { Run } from "../run.ts";
import { type Advisory, against, bodyPerfused, isAbove, isBelow, lastNumber } from "./advisory.ts";
import { ranged } from "./ranged.ts";

const pressure = ranged({
  id: "pressure",
  name: "MAP",
  quantity: "meanPressure",
  unit: "mm[Hg]",
  decimals: 0,
  priority: "medium",
  watched: "meanPressure",
  latest: (run) => (bodyPerfused(run) ? latestReading(run, "meanPressure") : null),
});

/** The newest of what a figure was made of brought it about. */
const broughtByAll = (inputs: Inputs) => ({
  since: Math.max(...inputs.map(({ at }) => at)),
  after: lastNumber(...inputs.map(({ fact }) => fact)),
});

const deliveryLow: Advisory = {
  id: "delivery-low",
  reads: ["watch.oxygenDelivery", "oxygen.perGram", "oxygen.dissolved"],
  says(run: Run) {
    const { value } = liveOxygen(run).delivery;
    const limit = run.course.protocol.watch.oxygenDelivery;
    if (!bodyPerfused(run) || value === null || !isBelow(value, limit.value)) return null;
    return {
      text: `${against("DO2i", value, limit.value, "mL/min/m2")}.`,
      source: limit.source,
      priority: "medium",
      ...broughtByAll(deliveryInputs(run)),
    };
  },
};

const extractionHigh: Advisory = {
  id: "extraction-high",
  reads: ["watch.oxygenExtraction", "oxygen.perGram", "oxygen.dissolved"],
  says(run: Run) {
    const { value } = liveOxygen(run).extraction;
    const limit = run.course.protocol.watch.oxygenExtraction;
    if (!bodyPerfused(run) || value === null || !isAbove(value, limit.value)) return null;
    return {
      text: `${against("O2ER", value, limit.value, "%")}.`,
      source: limit.source,
      priority: "medium",
      ...broughtByAll(extractionInputs(run)),
    };
  },
};

export const pressureAndFlowAdvisories: readonly Advisory[] = [...pressure, deliveryLow, extractionHigh];
