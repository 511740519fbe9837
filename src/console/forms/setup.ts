/** k: the patient and the plan, with everything that follows from them beside the fields as they fill. */
import { figureText } from "../../figures/figure.ts";
import type { Patient, Plan } from "../../figures/patient.ts";
import { plausible } from "../../figures/plausibility.ts";
import { setupFigures } from "../../figures/setup-figures.ts";
import { sumOf, type Volume } from "../../figures/volumes.ts";
import { type Outcome, refused, taken } from "../../format/outcome.ts";
import type { Draft } from "../../record/entry.ts";
import { ofKind } from "../../record/standing.ts";
import type { Beside, Field, Form, Value, Values } from "../form.ts";
import type { Context, FormStroke } from "../stroke.ts";
import { choiceField, numberField, textField } from "./fields.ts";
import { quantityField } from "./quantity.ts";
import {
  BLOOD,
  LABORATORY,
  type Measured,
  PATIENT_NUMBERS,
  PATIENT_WORDS,
  PLAN_NUMBERS,
} from "./setup-tables.ts";

/** Everything the form may hold of a patient, in the canonical fields of the record. */
function patientFrom(values: Values): Patient {
  const told: { [field: string]: Value } = {};
  for (const { id, of } of [...PATIENT_WORDS, ...PATIENT_NUMBERS])
    if (values[id] !== undefined) told[of] = values[id];
  if (values.sex !== undefined) told.sex = values.sex;
  for (const { name, short } of [...BLOOD, ...LABORATORY])
    if (values[short] !== undefined) told[name] = values[short];
  return told;
}

function planFrom(values: Values): Plan {
  const told: { [field: string]: Value } = {};
  for (const { id, of } of PLAN_NUMBERS) if (values[id] !== undefined) told[of] = values[id];
  if (values.operation !== undefined) told.operation = values.operation;
  if (values.solution !== undefined) told.solution = values.solution;
  return told;
}

function fieldsFor({ run }: Context): readonly Field[] {
  const { patient, plan, protocol, volumes } = run.course;
  const warn = (field: string) => (value: number, soFar: Values) => {
    const { weight, height } = { ...patient, ...patientFrom(soFar) };
    return plausible(field, value, { weight, height, protocol });
  };
  const told: { readonly [field: string]: unknown } = { ...patient, ...plan };
  const words = (id: string, of: string, label: string) =>
    textField(id, label, told[of] as string | undefined);
  const numbers = ({ of, ...rest }: (typeof PATIENT_NUMBERS)[number] | (typeof PLAN_NUMBERS)[number]) =>
    numberField({ ...rest, standing: (told[of] ?? usual[of]) as number | undefined, warn: warn(of) });
  const measured = ({ name, lowest, highest, ...quantity }: Measured) =>
    quantityField(name, { name, ...quantity }, protocol, told[name] as number | undefined, {
      lowest,
      highest,
    });
  const usual: { readonly [field: string]: number } = {
    flowIndex: protocol.body.flowIndex.value,
    heparinPerKg: protocol.coagulation.heparinPerKg.value,
  };
  const primed = primeIn(volumes) ?? undefined;
  const usualPrime = protocol.circuit.prime.reduce((sum, { ml }) => sum + ml, 0);
  const [first, ...rest] = PATIENT_WORDS;
  return [
    words(first.id, first.of, first.label),
    choiceField("sex", "sex", patient.sex, ["male", "female", "unknown"]),
    ...PATIENT_NUMBERS.map(numbers),
    ...BLOOD.map(measured),
    ...rest.map(({ id, of, label }) => words(id, of, label)),
    words("operation", "operation", "operation"),
    choiceField(
      "solution",
      "solution",
      plan.solution ?? protocol.usualSolution,
      protocol.solutions.map(({ id }) => id),
    ),
    ...PLAN_NUMBERS.map(numbers),
    numberField({
      id: "prime",
      label: "prime",
      unit: "mL",
      standing: primed ?? usualPrime,
      lowest: 0,
      highest: 10_000,
      example: "1400",
    }),
    ...LABORATORY.map(measured),
  ];
}

/** Only what differs from what is recorded already: a change is an entry, the rest stays as it was told. */
const changed = (told: object, before: object): object =>
  Object.fromEntries(
    Object.entries(told).filter(
      ([field, value]) => value !== (before as { [field: string]: unknown })[field],
    ),
  );

function draftsFor(values: Values, { run }: Context): Outcome<readonly Draft[]> {
  const { patient, plan } = run.course;
  const ofPatient = changed(patientFrom(values), patient);
  const ofPlan = changed(planFrom(values), plan);
  const drafts: Draft[] = [];
  if (Object.keys(ofPatient).length > 0) drafts.push({ kind: "patient", ...ofPatient } as Draft);
  if (Object.keys(ofPlan).length > 0) drafts.push({ kind: "plan", ...ofPlan } as Draft);
  const prime = primeDraft(values, run);
  if (prime) drafts.push(prime);
  return drafts.length === 0 ? refused("Nothing new was typed: Esc sets the form aside.") : taken(drafts);
}

/** The prime is one volume in; told again, that entry is put right. */
function primeDraft({ prime }: Values, { course }: Context["run"]): Draft | null {
  if (typeof prime !== "number") return null;
  const before = ofKind(course.record.facts, "volume").find(
    ({ entry }) => entry.direction === "in" && entry.fluid === "prime",
  );
  if (!before) return { kind: "volume", direction: "in", fluid: "prime", ml: prime };
  return before.entry.ml === prime
    ? null
    : { kind: "amend", target: before.entry.id, changes: { ml: prime } };
}

/** Every figure that follows from what is recorded and what is typed so far. */
function besideFor(values: Values, { run }: Context): readonly Beside[] {
  const { patient, plan, protocol, volumes } = run.course;
  const told = { ...patient, ...patientFrom(values) };
  const planned = { ...plan, ...planFrom(values) };
  const primed = typeof values.prime === "number" ? values.prime : primeIn(volumes);
  return setupFigures(told, planned, protocol, primed).map((figure) => ({
    name: figure.name,
    value: figureText(figure, figure.decimals),
    working: figure.source ? `${figure.working} · ${figure.source}` : figure.working,
  }));
}

const primeIn = (volumes: readonly Volume[]): number | null =>
  sumOf(volumes, ({ fluid, direction }) => direction === "in" && fluid === "prime");

export const setup: FormStroke = {
  key: "k",
  id: "setup",
  name: "patient and plan",
  short: "plan",
  opens: "form",
  takes: "a form beside the figures that follow from it; = takes the value shown, empty fields stay unknown",
  likely: ["before"],
  form: {
    id: "setup",
    title: "patient and plan",
    fields: fieldsFor,
    drafts: draftsFor,
    beside: besideFor,
  } satisfies Form,
};
