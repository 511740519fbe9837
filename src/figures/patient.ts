/** The patient and the plan as last told: each entry adds to or replaces what the ones before it said. */
import type { EntryOf } from "../record/entry.ts";
import { type Fact, ofKind } from "../record/standing.ts";

export type Patient = Partial<EntryOf<"patient">>;
export type Plan = Partial<EntryOf<"plan">>;

/** Every field as it was told last; what nobody told is not there. */
export const patientOf = (facts: readonly Fact[]): Patient => merged(ofKind(facts, "patient"));
export const planOf = (facts: readonly Fact[]): Plan => merged(ofKind(facts, "plan"));

const merged = <E extends object>(facts: readonly { entry: E }[]): Partial<E> =>
  Object.assign({}, ...facts.map(({ entry }) => entry));
