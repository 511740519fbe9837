/** Flow, and the pressure it makes. */
import { known } from "../../src/figures/figure.ts";
import { flowAtIndex, flowAtTemperature } from "../../src/figures/flow-plan.ts";
import { flowAtWeight } from "../../src/figures/full-flow.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import { paediatricProtocol } from "../../src/protocol/paediatric.ts";
import { advises } from "./advised.ts";
import { type Check, group, type Section } from "./check.ts";

const CARDS = "perfusion-course flash cards, paediatric overview";
const EUROPEAN = "EACTS/EACTA/EBCP guideline 2019, as summarised at Medscape 920531_2";

const surface = known(1.816, "m2", "given");
const byWeight = (kg: number) => flowAtWeight(kg, paediatricProtocol.body.flowByWeight ?? []);
const indexAt = (celsius: number) =>
  flowAtTemperature(celsius, known(1, "m2", "given"), adultProtocol.body.flowByTemperature);
const meanPressure = (mmHg: number) => advises({ meanPressure: mmHg }, /^pressure-/);

const BANDS: readonly (readonly [kg: number, litres: number])[] = [
  [8, 1.2],
  [12, 1.5],
  [20, 2],
  [40, 3],
  [60, 3.9],
];

/** At the upper bound of each step, which belongs to the step. */
const EDGES: readonly (readonly [kg: number, litres: number])[] = [
  [3, 0.6],
  [10, 1.5],
  [15, 1.875],
  [30, 3],
  [55, 4.125],
];

const weights = (what: string, rows: typeof BANDS, source: string): Check[] =>
  group(
    { what, source, sureness: "C" },
    rows.map(([kg, litres]) => [`weight-${kg}`, `${kg} kg`, litres, 1e-9, () => byWeight(kg)]),
  );

export const flow: Section = {
  name: "flow",
  checks: [
    ...group({ what: "flow at an index", source: "index × surface", sureness: "C" }, [
      ["index-2.4", "2.4 L/min/m², 1.816 m²", 4.36, 0.005, () => flowAtIndex({ value: 2.4 }, surface)],
    ]),
    ...weights("flow by weight", BANDS, CARDS),
    ...weights(
      "flow by weight, at the edge of a step",
      EDGES,
      `${CARDS}; we let a step include its upper bound`,
    ),
    ...group({ what: "flow index by temperature", source: "from memory: a teaching table", sureness: "M" }, [
      ["at-37", "37 °C", 2.4, 0, () => indexAt(37)],
      ["at-33", "33 °C", 2.2, 0, () => indexAt(33)],
      ["at-29", "29 °C", 2.0, 0, () => indexAt(29)],
      ["at-25", "25 °C", 1.6, 0, () => indexAt(25)],
      ["at-18", "18 °C", 1.2, 0, () => indexAt(18)],
    ]),
    ...group({ what: "whether a mean pressure is advised upon", source: EUROPEAN, sureness: "Q2" }, [
      ["pressure-49", "49 mmHg", true, 0, () => meanPressure(49)],
      ["pressure-50", "50 mmHg", false, 0, () => meanPressure(50)],
      ["pressure-80", "80 mmHg", false, 0, () => meanPressure(80)],
      ["pressure-81", "81 mmHg", true, 0, () => meanPressure(81)],
    ]),
  ],
};
