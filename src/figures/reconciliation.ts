/** The volumes reconciled at the end: in, out, net, returned and left, each with its arithmetic. */
import { fixed, plain, signed } from "../format/number.ts";
import { harmless } from "../format/text.ts";
import type { Figure } from "./figure.ts";
import { folded } from "./folded.ts";
import type { Run } from "./run.ts";
import type { Volume } from "./volumes.ts";

const COLUMN = 10;

/** A line for each of them, longer sums folded; what was not recorded says so. */
export function reconciliation(run: Run): readonly string[] {
  const { balances } = run.course;
  const lines: readonly (readonly [string, string])[] = [
    ["in", sumText(inTerms(run), balances.fluidIn)],
    ["out", sumText(outTerms(run), balances.out)],
    [
      "net",
      balances.net.value === null
        ? balances.net.working
        : `${balances.net.working} = ${mL(balances.net, signed)}`,
    ],
    ["returned", returnedText(run)],
    [
      "left",
      run.pump.left.value === null
        ? run.pump.left.working
        : `${run.pump.left.working} = ${mL(run.pump.left)}`,
    ],
    ["patient", patientText(run)],
  ];
  return lines.flatMap(([label, text]) => folded(label, text, COLUMN));
}

const mL = ({ value }: Figure, write: (value: number | null) => string = fixed) => `${write(value)} mL`;

type Term = readonly [ml: number, name: string];

const sumText = (terms: readonly Term[], sum: Figure): string =>
  sum.value === null
    ? sum.working
    : `${terms.map(([ml, name]) => `${plain(ml)} ${name}`).join(" + ")} = ${mL(sum)}`;

/** One term a fluid, in the order in which they first came. */
function byFluid({ course: { volumes, protocol } }: Run, direction: "in" | "out"): Term[] {
  const sums = new Map<string, number>();
  const those = volumes.filter(({ fact }) => fact.entry.direction === direction);
  for (const { fact, ml } of those) sums.set(fact.entry.fluid, (sums.get(fact.entry.fluid) ?? 0) + ml);
  const known = direction === "in" ? protocol.fluidsIn : protocol.fluidsOut;
  return [...sums].map(([id, ml]) => [ml, known.find((fluid) => fluid.id === id)?.name ?? harmless(id)]);
}

function inTerms(run: Run): Term[] {
  const { balances, protocol } = run.course;
  const crystalloid = balances.arrestCrystalloid.value;
  const counted = protocol.solutionCountsAsFluid && crystalloid !== null;
  return [
    ...byFluid(run, "in"),
    ...(counted ? [[crystalloid, "crystalloid of arrest solution"] as const] : []),
  ];
}

const outTerms = (run: Run): Term[] => byFluid(run, "out");

/** What was returned came out of the pump: it changes hands and is no part of the net. */
function returnedText({ course }: Run): string {
  const { returned } = course.balances;
  if (returned.value === null) return returned.working;
  const each = course.volumes.filter(({ fact }: Volume) => fact.entry.direction === "returned");
  return `${each.map(({ ml }) => plain(ml)).join(" + ")} = ${mL(returned)}, from the pump to the patient`;
}

const patientText = ({ netToPatient }: Run): string =>
  netToPatient.value === null
    ? netToPatient.working
    : `${netToPatient.working} = ${mL(netToPatient, signed)}`;
