/** Everything that follows from the patient and the plan before the run, in the order in which it is asked for. */
import { plain } from "../format/number.ts";
import { type Protocol, solutionOf } from "../protocol/protocol.ts";
import { bodyMassIndex, bodySurfaces, leanMass } from "./body.ts";
import { bodySurface, SURFACE_FORMULAS, surfaceOf } from "./body-surface.ts";
import { type Figure, missing } from "./figure.ts";
import { flowAtIndex, flowAtTemperature, flowIndexOf } from "./flow-plan.ts";
import { fullFlow } from "./full-flow.ts";
import type { Patient, Plan } from "./patient.ts";
import {
  heparinDose,
  heparinShown,
  heparinVolume,
  protaminePlanned,
  protamineVolume,
  solutionDose,
} from "./planned-doses.ts";
import { bloodFigures, firstCrystalloid, type Named, oxygenFigures, type Setup } from "./setup-blood.ts";

export type NamedFigure = Figure & { readonly name: string; readonly decimals: number };

/**
 * Every figure of the setup; one that lacks an input has no value and says what is missing. `primed` is the prime
 * recorded in mL, `null` while none is.
 */
export function setupFigures(
  patient: Patient,
  plan: Plan,
  protocol: Protocol,
  primed: number | null = null,
): readonly NamedFigure[] {
  const setup = { patient, plan, protocol, primed };
  return [
    ...flowFigures(setup),
    ...bloodFigures(setup),
    ...oxygenFigures(setup),
    ...doseFigures(setup),
    ...sizeFigures(setup),
  ].map(([name, figure]) => ({ ...figure, name, decimals: decimalsOf(figure) }));
}

function flowFigures(setup: Setup): readonly Named[] {
  const { patient, plan, protocol } = setup;
  const { surfaceFormula, flowByTemperature } = protocol.body;
  const surface = surfaceOf(setup);
  const full = fullFlow(patient, plan, protocol);
  const celsius = plan.targetTemperature;
  const cooled: readonly Named[] =
    celsius === undefined || !flowByTemperature
      ? []
      : [[`flow at ${plain(celsius)} °C`, flowAtTemperature(celsius, surface, flowByTemperature)]];
  return [
    [`body surface (${SURFACE_FORMULAS[surfaceFormula].name})`, surface],
    ["full flow", full],
    ["index of full flow", flowIndexOf(full, surface)],
    ...cooled,
  ];
}

function doseFigures(setup: Setup): readonly Named[] {
  const { patient, plan, protocol } = setup;
  const { coagulation } = protocol;
  const solution = solutionOf(protocol, plan.solution);
  const heparin = heparinDose(patient, plan, coagulation);
  const protamine = protaminePlanned(heparin, coagulation);
  const repeated: readonly Named[] = solution?.repeat
    ? [["repeat dose", solutionDose(solution.repeat, patient)]]
    : [];
  return [
    ["heparin", heparinShown(heparin, protocol)],
    ["heparin to draw up", heparinVolume(heparin, coagulation)],
    ["protamine", protamine],
    ["protamine to draw up", protamineVolume(protamine, coagulation)],
    ["first dose of arrest solution", solutionDose(solution?.first, patient)],
    ["crystalloid in it", firstCrystalloid(setup)],
    ...repeated,
  ];
}

function sizeFigures(setup: Setup): readonly Named[] {
  const { patient, protocol } = setup;
  const { surfaceFormula, leanMassAboveBmi } = protocol.body;
  const index = bodyMassIndex(patient);
  const isHeavy = leanMassAboveBmi !== undefined && (index.value ?? 0) >= leanMassAboveBmi.value;
  const others = bodySurfaces(patient)
    .filter(({ formula }) => formula !== surfaceFormula)
    .map(({ formula, area }): Named => [`body surface (${SURFACE_FORMULAS[formula].name})`, area]);
  return [["body mass index", index], ...(isHeavy ? leanFigures(setup) : []), ...others];
}

/** Lean mass, and the flow at the usual index for the body surface that it would have. */
function leanFigures({ patient, plan, protocol }: Setup): readonly Named[] {
  const lean = leanMass(patient);
  const { surfaceFormula, flowIndex } = protocol.body;
  const index = plan.flowIndex === undefined ? flowIndex : { value: plan.flowIndex, source: "as planned" };
  const flow =
    lean.value === null
      ? missing("L/min", lean.working)
      : flowAtIndex(index, bodySurface(surfaceFormula, lean.value, patient.height));
  return [
    ["lean mass", lean],
    ["full flow on lean mass", flow],
  ];
}

const DECIMALS: Readonly<Record<string, number>> = {
  "L/min": 2,
  "L/min/m2": 2,
  "mL/dL": 1,
  "kg/m2": 1,
  "%": 1,
  "g/dL": 1,
  kg: 1,
  "[IU]": 0,
};

/** By the unit; small surfaces, volumes and doses keep the decimals that matter to the newborn. */
function decimalsOf({ unit, value }: Figure): number {
  if (unit === "m2") return value !== null && value < 1 ? 3 : 2;
  const decimals = DECIMALS[unit];
  if (decimals !== undefined) return decimals;
  return value === null || value === 0 || value >= 100 ? 0 : value >= 10 ? 1 : 2;
}
