/** Everything that is due: the next dose, the next ACT, gas and readings on bypass, and the open reminders. */
import { MINUTE } from "../format/duration.ts";
import { plain } from "../format/number.ts";
import { latestMoment } from "./measured.ts";
import type { Run } from "./run.ts";
import { type Interval, intervalsOf, openInterval } from "./spans.ts";

export type Due = {
  readonly what: "dose" | "act" | "gas" | "readings" | "reminder";
  /** Milliseconds since the epoch. */
  readonly due: number;
  readonly text: string;
  /** Why it is due then. */
  readonly because: string;
  /** The reminder's entry, for ending it. */
  readonly target?: string;
};

/**
 * All of it, the most overdue first. A dose is due only while a clamp is on, at the solution's interval or at the time
 * given by `w`; ACT, gas and readings only while bypass is on.
 */
export function dueOf(run: Run): readonly Due[] {
  const bypass = openInterval(intervalsOf(run.course.spans, "bypass"));
  return [
    ...doseDue(run),
    ...(bypass ? [actDue(run, bypass), gasDue(run, bypass), readingsDue(run, bypass)] : []),
    ...run.course.reminders.map(
      ({ entry, due }): Due => ({
        what: "reminder",
        due,
        text: entry.text,
        because: "asked for",
        target: entry.id,
      }),
    ),
  ].sort((a, b) => a.due - b.due);
}

const doseDue = ({ nextDose: { due, because } }: Run): Due[] =>
  due === null ? [] : [{ what: "dose", due, text: "next dose", because }];

/** The last ACT counts wherever it was taken; with none, one is due since bypass went on. */
function actDue({ act, course }: Run, bypass: Interval): Due {
  if (!act) return { what: "act", due: bypass.from, text: "ACT", because: "none since the case was opened" };
  const because = `every ${plain(course.protocol.coagulation.actRecheck.value)} min on bypass`;
  return { what: "act", due: act.due, text: "ACT", because };
}

/** From the last sample of this bypass, or from its beginning. */
const gasDue = ({ course }: Run, bypass: Interval): Due => ({
  what: "gas",
  text: "gas",
  ...every(course.protocol.watch.gasEvery.value, bypass, latestMoment(course, "gas")),
});

const readingsDue = ({ course }: Run, bypass: Interval): Due => ({
  what: "readings",
  text: "readings",
  ...every(course.protocol.watch.readingsEvery.value, bypass, latestMoment(course, "readings")),
});

const every = (minutes: number, bypass: Interval, last: number | null) => ({
  due: Math.max(bypass.from, last ?? bypass.from) + minutes * MINUTE,
  because: `every ${plain(minutes)} min on bypass`,
});
