/** How long the heart has been without arrest solution, by the way it is given. */
import type { Route } from "../record/routes.ts";
import type { Dose } from "./doses.ts";
import { ROUTE_NAMES } from "./entry-words.ts";
import { type Figure, known } from "./figure.ts";
import type { Moment } from "./measured.ts";
import { intervalsOf, openInterval } from "./spans.ts";

export type Ischaemia = {
  /** `null` for doses whose route nobody said, and while no dose has been given. */
  readonly route: Route | null;
  /** Seconds since the last dose by this route ended, or since the clamp went on; nought while one runs. */
  readonly since: Figure;
};

/** One a route given by since the clamp went on, the longest first; none while no clamp is on. */
export function ischaemiaOf({ course, now }: Moment): readonly Ischaemia[] {
  const clamp = openInterval(intervalsOf(course.spans, "clamp"));
  if (!clamp) return [];
  const last = new Map<Route | null, Dose>();
  for (const dose of course.doses)
    if (dose.end === null || dose.end >= clamp.from) last.set(dose.route ?? null, dose);
  if (last.size === 0)
    return [{ route: null, since: seconds(now - clamp.from, "since the clamp went on, no dose yet") }];
  return [...last]
    .map(([route, { end }]): Ischaemia => {
      const way = route === null ? "dose, route not said" : `dose by the ${ROUTE_NAMES[route]}`;
      const since =
        end === null ? seconds(0, `a ${way} is running`) : seconds(now - end, `since the last ${way}`);
      return { route, since };
    })
    .sort((a, b) => (b.since.value ?? 0) - (a.since.value ?? 0));
}

const seconds = (ms: number, working: string): Figure =>
  known(Math.floor(Math.max(0, ms) / 1000), "s", working);
