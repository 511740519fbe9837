/** An item of the completeness list, and what the lists are made with. */
import { FROM_MEMORY } from "../protocol/decision.ts";
import type { Kind } from "../record/entry.ts";
import type { GasName, ReadingName } from "../record/quantities.ts";
import { ofKind } from "../record/standing.ts";
import { gasSeries, readingSeries } from "./measured.ts";
import type { Course } from "./run.ts";
import { intervalsOf } from "./spans.ts";

export type State = "present" | "missing" | "not-applicable";

export type Item = {
  readonly group: string;
  readonly item: string;
  readonly state: State;
  /** Edition and number of the standard that asks for it; items known from memory only say so. */
  readonly standard: string;
};

/**
 * Numbers are those of the 2013 edition, whose list of standards was read (PMC4557534); what each of them asks for in
 * detail was not, and is from memory.
 */
export const standard = (...numbers: readonly number[]): string =>
  `AmSECT 2013, Standard ${numbers.join(" and ")}; item ${FROM_MEMORY}`;

/** Applies always. */
export const present = (there: boolean): State => (there ? "present" : "missing");

/** Not applicable where the thing was not used at all. */
export const presentIf = (used: boolean, there: boolean): State => (used ? present(there) : "not-applicable");

/** Applies only when it is there: nothing in the record says that it was used and left out. */
export const whereUsed = (there: boolean): State => (there ? "present" : "not-applicable");

/** Whether a span was ever on. */
export const wasOn = ({ spans }: Course, what: string): boolean => intervalsOf(spans, what).length > 0;

/** Whether an entry of a kind stands. */
export const has = ({ record }: Course, kind: Kind): boolean => ofKind(record.facts, kind).length > 0;

/** Whether any of these readings was ever taken. */
export const read = (course: Course, ...names: readonly ReadingName[]): boolean =>
  names.some((name) => readingSeries(course, name).length > 0);

/** Whether all of these were ever measured in a sample. */
export const sampled = (course: Course, ...names: readonly GasName[]): boolean =>
  names.every((name) => gasSeries(course, name).length > 0);

/** Items of one group. */
export const grouped = (
  group: string,
  where: string,
  items: readonly (readonly [item: string, state: State])[],
): Item[] => items.map(([item, state]) => ({ group, item, state, standard: where }));
