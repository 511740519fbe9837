/** The balances, heparin and protamine with their working. */
import type { Run } from "../figures/run.ts";
import { figureLines, type Named, type PanelProps, PanelRows } from "./PanelRows.tsx";

const balancesOf = ({
  course: { balances, fullFlow },
  coagulation,
  pump,
  netToPatient,
}: Run): readonly Named[] => [
  ["arrest solution", balances.arrestGiven],
  ["of it crystalloid", balances.arrestCrystalloid],
  ["fluid in", balances.fluidIn],
  ["out", balances.out],
  ["net", balances.net],
  ["returned", balances.returned],
  ["left in the pump", pump.left],
  ["net to the patient", netToPatient],
  ["heparin", coagulation.heparinTotal],
  ["heparin per kg", coagulation.heparinPerKg],
  ["protamine on the first", coagulation.protamineOnFirst],
  ["protamine on all", coagulation.protamineOnTotal],
  ["protamine given", coagulation.protamineGiven],
  ["full flow", fullFlow, 2],
];

export const BalancesPanel = ({ run, columns, rows, scroll }: PanelProps) => (
  <PanelRows rows={rows} scroll={scroll} lines={figureLines(balancesOf(run), columns)} />
);
