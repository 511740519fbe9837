/** Advisories about the blood: haematocrit, glucose, potassium, carbon dioxide. */
import type { GasName } from "../../record/quantities.ts";
import { haematocritSeries, latestGas, latestOf, type Sample } from "../measured.ts";
import type { Run } from "../run.ts";
import { type Advisory, against, broughtBy, bypassOn, isBelow } from "./advisory.ts";
import { ranged } from "./ranged.ts";

const haematocritLow: Advisory = {
  id: "haematocrit-low",
  reads: ["watch.haematocritFloor"],
  says(run) {
    const latest = latestOf(haematocritSeries(run.course), run.now);
    const { value, source } = run.course.protocol.watch.haematocritFloor;
    if (!bypassOn(run) || !latest?.holds || !isBelow(latest.value, value)) return null;
    const text = `${against("Haematocrit", latest.value, value, "%", 1)}.`;
    return { text, source, priority: "medium", ...broughtBy(latest) };
  },
};

const onBypass = (name: GasName, sample?: Sample) => (run: Run) =>
  bypassOn(run) ? latestGas(run, name, sample) : null;

export const bloodAdvisories: readonly Advisory[] = [
  haematocritLow,
  ...ranged({
    id: "glucose",
    name: "Glucose",
    quantity: "glucose",
    unit: "mmol/L",
    decimals: 1,
    priority: "medium",
    watched: "glucose",
    latest: onBypass("glucose"),
  }),
  ...ranged({
    id: "potassium",
    name: "Potassium",
    quantity: "potassium",
    unit: "mmol/L",
    decimals: 1,
    priority: "medium",
    watched: "potassium",
    latest: onBypass("potassium"),
  }),
  ...ranged({
    id: "carbon-dioxide",
    name: "PaCO2",
    quantity: "carbonDioxide",
    unit: "mm[Hg]",
    decimals: 0,
    priority: "medium",
    watched: "carbonDioxide",
    latest: onBypass("carbonDioxide", "arterial"),
  }),
];
