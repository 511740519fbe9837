/** How the program comes to a figure that is held against the outside, by the words of the check. */
import { bodySurface, type SurfaceFormula } from "../../src/figures/body-surface.ts";
import { isActMet } from "../../src/figures/coagulation.ts";
import { toCanonical, toShown } from "../../src/figures/conversions.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import type { Protocol } from "../../src/protocol/protocol.ts";
import { minutes, runAt, typed } from "../helpers/typed-case.ts";

type Inputs = Readonly<Record<string, number | string>>;

const number = (inputs: Inputs, name: string) => Number(inputs[name]);

const withRatio = (value: number): Protocol => ({
  ...adultProtocol,
  coagulation: { ...adultProtocol.coagulation, protamineRatio: { value } },
});

const afterHeparin = ({ load, later, ratio = 1 }: Inputs) =>
  runAt(typed([`08:40 h ${load}`, `09:00 h ${later}`], withRatio(Number(ratio))), "12:00").coagulation;

function minutesToNext(usualSolution: string): number | null {
  const run = runAt(
    typed(["09:00 x", "09:10 d", "09:14 d 300"], { ...adultProtocol, usualSolution }),
    "09:14",
  );
  return run.nextDose.due === null ? null : (run.nextDose.due - run.now) / minutes(1);
}

export const RECKONED = {
  "body surface, m²": (inputs: Inputs) =>
    bodySurface(inputs.formula as SurfaceFormula, number(inputs, "kg"), number(inputs, "cm")).value,
  "crystalloid part of arrest solution, mL": ({ solution, ml }: Inputs) =>
    runAt(typed([`09:10 d ${ml}`], { ...adultProtocol, usualSolution: String(solution) }), "12:00").course
      .balances.arrestCrystalloid.value,
  "whether an ACT meets its target (1 or 0)": (inputs: Inputs) =>
    Number(isActMet(number(inputs, "seconds"), number(inputs, "target"))),
  "protamine on the first heparin, mg": (inputs: Inputs) => afterHeparin(inputs).protamineOnFirst.value,
  "protamine on all heparin, mg": (inputs: Inputs) => afterHeparin(inputs).protamineOnTotal.value,
  "most protamine, mg": (inputs: Inputs) => afterHeparin(inputs).protamineMost.value,
  "heparin typed in mg, IU": ({ mg }: Inputs) =>
    runAt(typed([`08:40 h ${mg}mg`]), "09:00").coagulation.heparinTotal.value,
  "minutes from the end of a 4:1 dose to the next": () => minutesToNext("blood-4-1"),
  "minutes from the end of a 1:4 dose to the next": () => minutesToNext("one-to-four"),
  "shown in kPa": (inputs: Inputs) => toShown("oxygen", "kPa", number(inputs, "mmHg")),
  "glucose typed in mg/dL, mmol/L": (inputs: Inputs) =>
    toCanonical("glucose", "mg/dL", number(inputs, "mgPerDl")),
  "lactate typed in mg/dL, mmol/L": (inputs: Inputs) =>
    toCanonical("lactate", "mg/dL", number(inputs, "mgPerDl")),
  "haemoglobin typed in g/L, g/dL": (inputs: Inputs) =>
    toCanonical("haemoglobin", "g/L", number(inputs, "gPerL")),
} as const satisfies Record<string, (inputs: Inputs) => number | null>;

export type What = keyof typeof RECKONED;
