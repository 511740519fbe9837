/** Advisories about the record itself: reminders, the order of what was written, the clock. */

import { stopwatch } from "../../format/duration.ts";
import { clockTimeOf } from "../../format/instant.ts";
import { lately } from "../../format/lately.ts";
import { signed } from "../../format/number.ts";
import { harmless } from "../../format/text.ts";
import type { Entry } from "../../record/entry.ts";
import { type Fact, lastOf } from "../../record/standing.ts";
import { entryWords } from "../entry-words.ts";
import { type Advisory, lastNumber } from "./advisory.ts";

/** It stands since the last of them fell due, so that each new one is seen. */
const reminderOverdue: Advisory = {
  id: "reminder-overdue",
  reads: [],
  says({ course, now }) {
    const overdue = course.reminders.filter(({ due }) => now > due);
    const [first, last] = [overdue[0], overdue.at(-1)];
    if (!first || !last) return null;
    const by = stopwatch(now - first.due);
    const which =
      overdue.length === 1
        ? `A reminder is overdue by ${by}`
        : `${overdue.length} reminders are overdue, the first by ${by}`;
    return {
      text: `${which}: ${harmless(first.entry.text)}.`,
      priority: "medium",
      since: last.due,
      after: Math.max(...overdue.map(({ entry }) => entry.seq)),
    };
  },
};

/** What an entry follows on: entries of one such subject change their meaning with their order. */
function subjectOf(entry: Entry): string | null {
  switch (entry.kind) {
    case "span":
      return `span ${entry.what}`;
    case "gas":
      return `gas ${entry.sample}`;
    case "volume":
      return entry.fluid === "urine" ? "urine" : null;
    case "dose":
    case "act":
    case "readings":
    case "flow":
    case "target":
    case "level":
      return entry.kind;
    default:
      return null;
  }
}

type Pair = { readonly earlier: Fact; readonly writtenFirst: Fact };

/** The last entry that happened before one of its own subject that was written before it. */
const outOfOrder = lately((written: readonly Fact[]): Pair | null => {
  const latest = new Map<string, Fact>();
  let found: Pair | null = null;
  for (const fact of written) {
    const subject = fact.struck ? null : subjectOf(fact.entry);
    if (subject === null) continue;
    const before = latest.get(subject);
    if (before && fact.at < before.at) found = { earlier: fact, writtenFirst: before };
    else latest.set(subject, fact);
  }
  return found;
});

const backDated: Advisory = {
  id: "out-of-order",
  reads: [],
  says({ course }) {
    const pair = outOfOrder(course.record.written);
    if (!pair) return null;
    const words = ({ entry }: Fact) => {
      const { subject, says } = entryWords(entry, course.protocol);
      return `#${entry.seq} ${subject} ${says} at ${clockTimeOf(entry.at)}`;
    };
    const { earlier, writtenFirst } = pair;
    return {
      text: `${words(earlier)} lies before ${words(writtenFirst)}, which was written first.`,
      priority: "low",
      since: earlier.at,
      after: lastNumber(earlier, writtenFirst),
    };
  },
};

const clockStepped: Advisory = {
  id: "clock-stepped",
  reads: [],
  says({ course }) {
    const step = lastOf(course.record.facts, "clock");
    if (!step) return null;
    return {
      text: `The system clock stepped by ${signed(step.entry.stepMs / 1000)} s at ${clockTimeOf(step.entry.at)}; the record's time did not.`,
      priority: "low",
      since: step.at,
      after: lastNumber(step),
    };
  },
};

export const recordAdvisories: readonly Advisory[] = [reminderOverdue, backDated, clockStepped];
