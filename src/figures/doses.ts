/** Doses of arrest solution: put together from their starts, running totals and ends. */
import type { Solution } from "../protocol/arrest.ts";
import { crystalloidPart, type Protocol, solutionOf } from "../protocol/protocol.ts";
import type { EntryOf } from "../record/entry.ts";
import type { Route } from "../record/routes.ts";
import { type Fact, ofKind } from "../record/standing.ts";

export type Dose = {
  readonly start: number;
  /** `null` while it runs. */
  readonly end: number | null;
  /** Millilitres in so far, or in all; `null` when nobody has said yet. */
  readonly ml: number | null;
  readonly route: Route | undefined;
  readonly solution: Solution | undefined;
  /** The entry that began it, and the one that last said something of it. */
  readonly first: Fact<EntryOf<"dose">>;
  readonly last: Fact<EntryOf<"dose">>;
};

/**
 * Doses in the order of happening. A start while one runs ends the one that ran; an end or a running total without
 * a start counts as a dose of its own, so that no millilitre is lost when a start was struck out.
 */
export function readDoses(facts: readonly Fact[], protocol: Protocol, planned?: string): Dose[] {
  const doses: Dose[] = [];
  for (const fact of ofKind(facts, "dose")) {
    const { state, ml, route, solution } = fact.entry;
    const before = doses.at(-1);
    const running = before?.end === null ? before : undefined;
    const ends = state === "end" || state === "whole";
    const goesOn = running !== undefined && state !== "start" && state !== "whole";
    if (running && !goesOn) doses[doses.length - 1] = { ...running, end: fact.at };
    const dose: Dose = goesOn
      ? {
          ...running,
          ml: ml ?? running.ml,
          route: route ?? running.route,
          solution: solution === undefined ? running.solution : solutionOf(protocol, solution),
          last: fact,
          end: ends ? fact.at : null,
        }
      : {
          start: fact.at,
          end: ends ? fact.at : null,
          ml: ml ?? null,
          route,
          solution: solutionOf(protocol, solution ?? planned),
          first: fact,
          last: fact,
        };
    if (goesOn) doses[doses.length - 1] = dose;
    else doses.push(dose);
  }
  return doses;
}

/** The dose that has been started and not ended. */
export const runningDose = (doses: readonly Dose[]): Dose | undefined => {
  const last = doses.at(-1);
  return last?.end === null ? last : undefined;
};

/** The dose that ended last. */
export const lastEnded = (doses: readonly Dose[]): Dose | undefined =>
  doses.findLast(({ end }) => end !== null);

/** Millilitres given, of all doses or of those by one route. */
export const givenMl = (doses: readonly Dose[], route?: Route): number =>
  doses.reduce((sum, dose) => sum + (route === undefined || dose.route === route ? (dose.ml ?? 0) : 0), 0);

/** Millilitres of crystalloid in the doses: of each, the crystalloid part of its solution's ratio. */
export const crystalloidMl = (doses: readonly Dose[]): number =>
  doses.reduce((sum, { ml, solution }) => sum + (ml ?? 0) * (solution ? crystalloidPart(solution) : 0), 0);
