// Cases told in lines and forms: `09:00 b` is typed, readings and gases are given as their forms would write them.

import { adultProtocol } from "../../src/protocol/adult.ts";
import type { Protocol } from "../../src/protocol/protocol.ts";
import type { CaseFile } from "../../src/record/case.ts";
import type { Draft } from "../../src/record/entry.ts";
import type { GasName, ReadingName } from "../../src/record/quantities.ts";
import { given, openedCase, typedOn } from "../helpers/typed-case.ts";

export type Step = string | { readonly clock: string; readonly draft: Draft };

export const readings = (clock: string, values: Partial<Record<ReadingName, number>>): Step => ({
  clock,
  draft: { kind: "readings", values },
});

export const gas = (
  clock: string,
  values: Partial<Record<GasName, number>>,
  sample: "arterial" | "venous" = "arterial",
): Step => ({ clock, draft: { kind: "gas", sample, values, convention: "alpha-stat" } });

export const entry = (clock: string, draft: Draft): Step => ({ clock, draft });

export const toldOn = (file: CaseFile, steps: readonly Step[]): CaseFile =>
  steps.reduce<CaseFile>(
    (before, step) =>
      typeof step === "string" ? typedOn(before, [step]) : given(before, step.draft, step.clock),
    file,
  );

export const told = (steps: readonly Step[], protocol: Protocol = adultProtocol): CaseFile =>
  toldOn(openedCase(protocol), steps);

/** 80 kg and 180 cm: two square metres after Mosteller, so an index is half the flow. */
export const twoSquareMetres: Step = entry("07:10", { kind: "patient", weight: 80, height: 180 });

export const byMosteller: Protocol = {
  ...adultProtocol,
  body: { ...adultProtocol.body, surfaceFormula: "mosteller" },
};
