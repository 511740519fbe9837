/** s and g: readings of pump and patient, and blood gas with laboratory values. */
import { type Outcome, refused, taken } from "../../format/outcome.ts";
import type { Draft } from "../../record/entry.ts";
import { GAS_VALUES, type Quantity, READINGS } from "../../record/quantities.ts";
import { type Fact, ofKind } from "../../record/standing.ts";
import type { Field, Form, Values } from "../form.ts";
import type { Context, FormStroke } from "../stroke.ts";
import { choiceField } from "./fields.ts";
import { quantityField } from "./quantity.ts";

type Table = { readonly [name: string]: Quantity };

/** The last value of a quantity among the facts of one kind. */
function lastValue(facts: readonly Fact[], kind: "readings" | "gas", name: string): number | undefined {
  const fact = ofKind(facts, kind).findLast(
    ({ entry }) => typeof (entry.values as Record<string, unknown>)[name] === "number",
  );
  return fact && ((fact.entry.values as Record<string, unknown>)[name] as number);
}

/** The fields a protocol chooses, in its order. */
const fieldsOf = (
  names: readonly string[],
  table: Table,
  kind: "readings" | "gas",
  { run }: Context,
): Field[] =>
  names.flatMap((name) => {
    const quantity = table[name];
    return quantity
      ? [quantityField(name, quantity, run.course.protocol, lastValue(run.course.record.facts, kind, name))]
      : [];
  });

/** Values by the quantities' names in the record. */
const named = (values: Values, table: Table) =>
  Object.fromEntries(
    Object.entries(table).flatMap(([name, { short }]) =>
      typeof values[short] === "number" ? [[name, values[short]]] : [],
    ),
  );

const NOTHING = "Nothing typed: type at least one value; Esc sets the form aside.";

const readingsForm: Form = {
  id: "readings",
  title: "readings",
  fields: (context) => fieldsOf(context.run.course.protocol.readingFields, READINGS, "readings", context),
  drafts: (values): Outcome<Draft[]> => {
    const measured = named(values, READINGS);
    return Object.keys(measured).length === 0
      ? refused(NOTHING)
      : taken([{ kind: "readings", values: measured }]);
  },
};

const gasForm: Form = {
  id: "gas",
  title: "gas and labs",
  fields: (context) => [
    choiceField("sample", "sample", "arterial", ["arterial", "venous"]),
    ...fieldsOf(context.run.course.protocol.gasFields, GAS_VALUES, "gas", context),
    choiceField("stat", "stat", "alpha-stat", ["alpha-stat", "ph-stat"]),
  ],
  drafts: (values): Outcome<Draft[]> => {
    const measured = named(values, GAS_VALUES);
    if (Object.keys(measured).length === 0) return refused(NOTHING);
    const sample = values.sample === "venous" ? "venous" : "arterial";
    const convention = values.stat === "ph-stat" ? "ph-stat" : "alpha-stat";
    return taken([{ kind: "gas", sample, values: measured, convention }]);
  },
};

export const readings: FormStroke = {
  key: "s",
  id: "readings",
  name: "readings",
  short: "readings",
  opens: "form",
  takes: "a form; Tab or Enter moves on, ; goes to its end, empty fields stay unknown",
  likely: ["on bypass", "arrested", "reperfusing", "weaning"],
  form: readingsForm,
};

export const gas: FormStroke = {
  key: "g",
  id: "gas",
  name: "gas and labs",
  short: "gas",
  opens: "form",
  takes: "a form; Tab or Enter moves on, ; goes to its end, empty fields stay unknown",
  likely: ["before", "on bypass", "arrested", "reperfusing", "after"],
  form: gasForm,
};
