/** The parts of the circuit that both shipped protocols list, in words that name no maker. */

import type { Circuit } from "./circuit.ts";
import { CITED } from "./citations.ts";
import { FROM_MEMORY } from "./decision.ts";

const INCH = 25.4;

const tubing = (id: string, inches: number, name: string) => ({
  id,
  name,
  boreMm: Number((inches * INCH).toFixed(4)),
  source: "computed from the inch, 25.4 mm; volume as π/4·bore²",
});

const component = (id: string, name: string) => ({ id, name });

/** The circuit with a unit's own prime, in mL a fluid. */
export const circuitPrimedWith = (prime: Circuit["prime"]): Circuit => ({
  prime: prime.map((fluid) => ({ ...fluid, source: FROM_MEMORY })),
  tubing: [
    tubing("bore-3-16", 3 / 16, "3/16 inch"),
    tubing("bore-1-4", 1 / 4, "1/4 inch"),
    tubing("bore-3-8", 3 / 8, "3/8 inch"),
    tubing("bore-1-2", 1 / 2, "1/2 inch"),
  ],
  components: [
    component("heart-lung-machine", "heart-lung machine"),
    component("heater-cooler", "heater-cooler"),
    component("oxygenator", "oxygenator"),
    component("reservoir", "venous reservoir"),
    component("arterial-filter", "arterial filter"),
    component("pump-head", "pump head"),
    component("tubing-pack", "tubing pack"),
    component("arrest-solution-set", "arrest solution set"),
    component("arterial-cannula", "arterial cannula"),
    component("venous-cannula", "venous cannula"),
    component("second-venous-cannula", "second venous cannula"),
    component("root-cannula", "aortic root cannula"),
    component("coronary-sinus-cannula", "coronary sinus cannula"),
    component("vent", "vent"),
    component("ultrafilter", "ultrafilter"),
    component("cell-salvage", "cell salvage machine"),
    component("cell-salvage-set", "cell salvage set"),
    component("arrest-solution", "arrest solution"),
  ],
  packedCellHaematocrit: { value: 60, source: CITED.redCells },
});
