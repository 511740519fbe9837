/** Advisories about the clamp and the arrest solution. */
import { stopwatch } from "../../format/duration.ts";
import { lastEnded } from "../doses.ts";
import { BY_ORDER } from "../next-dose.ts";
import { intervalsOf, openInterval } from "../spans.ts";
import { type Advisory, bypassOn, lastNumber } from "./advisory.ts";

const doseOverdue: Advisory = {
  id: "dose-overdue",
  reads: ["solutions"],
  says({ nextDose: { due, because }, course, now }) {
    if (due === null || now <= due) return null;
    const last = lastEnded(course.doses);
    return {
      text: `The next dose of arrest solution is overdue by ${stopwatch(now - due)} (${because}).`,
      source: because === BY_ORDER ? undefined : last?.solution?.interval?.source,
      priority: "medium",
      since: due,
      after: lastNumber(last?.last),
    };
  },
};

const clampOffBypass: Advisory = {
  id: "clamp-off-bypass",
  reads: [],
  says(run) {
    const { spans } = run.course;
    const clamp = openInterval(intervalsOf(spans, "clamp"));
    const stopped = openInterval(intervalsOf(spans, "circulatory-arrest"));
    if (!clamp || bypassOn(run) || stopped) return null;
    const off = intervalsOf(spans, "bypass").at(-1)?.to ?? clamp.from;
    const resumed = intervalsOf(spans, "circulatory-arrest").at(-1)?.to ?? clamp.from;
    return {
      text: "The clamp is on while bypass is off.",
      priority: "high",
      since: Math.max(clamp.from, off, resumed),
      after: lastNumber(clamp.on),
    };
  },
};

export const arrestAdvisories: readonly Advisory[] = [doseOverdue, clampOffBypass];
