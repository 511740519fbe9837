/** Choosing among many cases, and putting them in order. */
import { harmless } from "../format/text.ts";
import { type CaseSummary, openedMs } from "./case-summary.ts";
import type { Sort } from "./formats.ts";

/** What a list tells of one case; of a damaged one only its id and why. */
export type Told =
  | (CaseSummary & { readonly id: string; readonly fault?: undefined; readonly damage?: string | undefined })
  | { readonly id: string; readonly fault: string };

export type Choice = {
  readonly state?: "open" | "closed" | undefined;
  /** Days, both included, as the calendar was where the case was opened: `2026-03-04`. */
  readonly since?: string | undefined;
  readonly until?: string | undefined;
  /** Parts of the text, large and small letters alike. */
  readonly operation?: string | undefined;
  readonly label?: string | undefined;
};

/** Whether a choice asks for what only the file can tell. */
export const looksInside = ({ state, operation, label }: Choice): boolean =>
  [state, operation, label].some((asked) => asked !== undefined);

/** The cases that are meant. A damaged one can be chosen by the day in its name, and by nothing else. */
export const chosen = <T extends Told>(cases: readonly T[], choice: Choice): T[] =>
  cases.filter(
    (one) =>
      isOnDays(dayIn(one), choice) && (one.fault === undefined ? fits(one, choice) : !looksInside(choice)),
  );

function fits(one: CaseSummary, { state, operation, label }: Choice): boolean {
  if (state !== undefined && one.state !== state) return false;
  return holds(one.operation, operation) && holds(one.label, label);
}

const holds = (text: string | undefined, part: string | undefined): boolean =>
  part === undefined ||
  harmless(text ?? "")
    .toLowerCase()
    .includes(harmless(part).toLowerCase());

const isOnDays = (day: string, { since, until }: Choice): boolean =>
  (since === undefined || day >= since) && (until === undefined || day <= until);

/** The day of a case, `2026-03-04`. */
export function dayIn(one: Told): string {
  if (one.fault === undefined) return one.opened.slice(0, 10);
  return `${one.id.slice(0, 4)}-${one.id.slice(4, 6)}-${one.id.slice(6, 8)}`;
}

/** Newest, longest or first of the alphabet at the top; what is not known comes last either way. */
export function sorted<T extends Told>(cases: readonly T[], sort: Sort, reverse = false): T[] {
  const known = cases.filter((one) => keyOf(one, sort) !== null);
  const unknown = cases.filter((one) => keyOf(one, sort) === null);
  const inOrder = known.toSorted((a, b) => compared(keyOf(a, sort), keyOf(b, sort)));
  return [...(reverse ? inOrder.toReversed() : inOrder), ...unknown];
}

type SortKey = number | string | null;

function keyOf(one: Told, sort: Sort): SortKey {
  if (one.fault !== undefined) return sort === "date" ? Date.parse(`${dayIn(one)}T23:59:59Z`) || null : null;
  switch (sort) {
    case "date":
      return openedMs(one);
    case "bypass":
      return one.figures.bypassTime;
    case "arrest":
      return one.figures.arrestTime;
    case "label":
      return harmless(one.label);
    default:
      return sort satisfies never;
  }
}

const compared = (a: SortKey, b: SortKey): number =>
  typeof a === "string" ? a.localeCompare(String(b), "en") : Number(b) - Number(a);
