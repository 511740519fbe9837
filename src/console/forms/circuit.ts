/** j: the circuit's components with size, lot and expiry, typed or scanned, and who is in the room. */
import { dayOf, toIso } from "../../format/instant.ts";
import { type Outcome, refused, taken } from "../../format/outcome.ts";
import type { Draft, EntryOf } from "../../record/entry.ts";
import { ofKind } from "../../record/standing.ts";
import type { Field, Form, Values } from "../form.ts";
import type { Context, FormStroke } from "../stroke.ts";
import { textField } from "./fields.ts";
import { readScan } from "./scan.ts";

const ROLES = [
  "surgeon",
  "assistant",
  "anaesthetist",
  "perfusionist",
  "second perfusionist",
  "scrub nurse",
  "runner",
] as const;

type Component = EntryOf<"circuit">["components"][number];

const componentsOf = ({ run }: Context): readonly Component[] =>
  ofKind(run.course.record.facts, "circuit").at(-1)?.entry.components ?? [];
const peopleOf = ({ run }: Context) => ofKind(run.course.record.facts, "team").at(-1)?.entry.people ?? [];

const componentText = ({ size, lot, expires }: Component) => [size, lot, expires].filter(Boolean).join(" ");

/** An expiry day that has passed is pointed out; the component is taken down all the same. */
function componentField(id: string, name: string, standing: string, today: string): Field {
  return {
    ...textField(id, name, standing),
    warn: (value) => {
      const { expires } = readScan(String(value));
      return expires !== undefined && expires < today.slice(0, expires.length)
        ? `${name} expired ${expires}: check the pack.`
        : null;
    },
  };
}

function fieldsFor(context: Context): readonly Field[] {
  const known = componentsOf(context);
  const people = peopleOf(context);
  const today = dayOf(toIso(context.at));
  return [
    ...ROLES.map((role) =>
      textField(role.replace(" ", "-"), role, people.find((one) => one.role === role)?.who),
    ),
    ...context.run.course.protocol.circuit.components.map(({ id, name }) => {
      const one = known.find(({ component }) => component === id);
      return componentField(id, name, one ? componentText(one) : "", today);
    }),
  ];
}

/** The whole list again, with what was typed in the place of what was known. */
function draftsFor(values: Values, context: Context): Outcome<readonly Draft[]> {
  const { components } = context.run.course.protocol.circuit;
  const known = componentsOf(context);
  const typed = components.filter(({ id }) => values[id] !== undefined);
  const roles = ROLES.filter((role) => values[role.replace(" ", "-")] !== undefined);
  const drafts: Draft[] = [];
  if (roles.length > 0) {
    const others = peopleOf(context).filter(({ role }) => !roles.some((one) => one === role));
    const people = roles.map((role) => ({ role, who: String(values[role.replace(" ", "-")]) }));
    drafts.push({ kind: "team", people: [...others, ...people] });
  }
  if (typed.length > 0) {
    const others = known.filter(({ component }) => !typed.some(({ id }) => id === component));
    const told = typed.map(({ id }): Component => ({ component: id, ...readScan(String(values[id])) }));
    drafts.push({ kind: "circuit", components: [...others, ...told] });
  }
  return drafts.length === 0 ? refused("Nothing new was typed: Esc sets the form aside.") : taken(drafts);
}

export const circuit: FormStroke = {
  key: "j",
  id: "circuit",
  name: "circuit and team",
  short: "circuit",
  opens: "form",
  takes:
    "a form: people by role; for each component size, lot and expiry (20Fr A123 2027-03), or scan its code",
  likely: ["before"],
  form: { id: "circuit", title: "circuit and team", fields: fieldsFor, drafts: draftsFor } satisfies Form,
};
