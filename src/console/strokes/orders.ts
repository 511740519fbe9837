/** f t w: flow ordered, temperature ordered, and reminders. */

import { isOn, type Run } from "../../figures/run.ts";
import { MINUTE } from "../../format/duration.ts";
import { type Instant, toIso } from "../../format/instant.ts";
import { lookUp } from "../../format/look-up.ts";
import { fixed, plain } from "../../format/number.ts";
import { andThen, type Outcome, refused, taken } from "../../format/outcome.ts";
import type { Draft } from "../../record/entry.ts";
import { notThat, numberAndUnit, numberOf, numberWithin } from "../amounts.ts";
import type { EntryStroke } from "../stroke.ts";

const FRACTIONS: Record<string, number> = { full: 1, "3/4": 0.75, "1/2": 0.5, "1/4": 0.25 };

type Order = { litresPerMinute: number } | { fraction: number };

/** Litres a minute, or a fraction of full: `4.5`, `full`, `3/4`, `1/2`, `1/4`, `0`. */
export function readFlow(words: readonly string[]): Outcome<Order> {
  const typed = words.join("").toLowerCase();
  const fraction = lookUp(FRACTIONS, typed);
  if (fraction !== undefined) return taken({ fraction });
  const found = numberAndUnit(typed);
  if (!found || !["", "l", "l/min"].includes(found.unit)) {
    return refused(`${notThat(typed, "a flow")}: type L/min such as 4.5, or full, 3/4, 1/2, 1/4, 0.`);
  }
  if (found.value > 15)
    return refused(`${found.value} L/min cannot be a pump flow: type litres a minute such as 4.5.`);
  return taken({ litresPerMinute: found.value });
}

export const flow: EntryStroke = {
  key: "f",
  id: "flow",
  short: "flow",
  name: "flow",
  opens: "line",
  takes: "L/min, or full, 3/4, 1/2, 1/4, 0",
  likely: ["on bypass", "arrested", "reperfusing", "weaning"],
  example: "f 3/4",
  asks: ({ run: { course } }) =>
    course.fullFlow.value === null
      ? "L/min, or full 3/4 1/2 1/4 0"
      : `L/min, or full 3/4 1/2 1/4 0 (full is ${fixed(course.fullFlow.value, 2)})`,
  read: ({ words }) => andThen(readFlow(words), (order): Outcome<Draft> => taken({ kind: "flow", ...order })),
};

/** An ordered temperature in °C, from 5 to 42: `32`, `32.5`. */
export const readCelsius = (words: readonly string[]): Outcome<number> =>
  numberWithin(words.join("") || undefined, "a temperature", "°C", 5, 42, "32");

export const target: EntryStroke = {
  key: "t",
  id: "target",
  short: "temp",
  name: "temperature target",
  opens: "line",
  takes: "°C; lower than now is cooling, higher is rewarming",
  likely: ["on bypass", "arrested", "reperfusing"],
  example: "t 32",
  asks: ({ run }) => (run.targetOrder ? `°C (now ordered ${plain(run.targetOrder.entry.celsius)})` : "°C"),
  read: ({ words }) =>
    andThen(readCelsius(words), (celsius): Outcome<Draft> => taken({ kind: "target", celsius })),
};

const NEXT_DOSE = "next arrest dose";

/** Minutes until a reminder, a day at the most. */
export function readMinutes(word: string | undefined): Outcome<number> {
  const minutes = word === undefined ? null : numberOf(word);
  return minutes === null || minutes > 1440
    ? refused(`${notThat(word, "a number of minutes up to 1440")}: type such as 20, or 15 blood gas.`)
    : taken(minutes);
}

const NONE_OPEN = "No reminder is open: type minutes, then what for.";

function ended({ course: { reminders } }: Run): Outcome<Draft> {
  return reminders[0] ? taken({ kind: "reminder-done", target: reminders[0].entry.id }) : refused(NONE_OPEN);
}

/** The reminder that is due first, put off to so many minutes from now. */
function putOff(typed: string, { course: { reminders } }: Run, at: Instant): Outcome<Draft> {
  const [first] = reminders;
  if (!first) return refused(NONE_OPEN);
  return andThen(
    readMinutes(typed.slice(1)),
    (minutes): Outcome<Draft> =>
      taken({
        kind: "amend",
        target: first.entry.id,
        changes: { dueAt: toIso({ ...at, ms: at.ms + minutes * MINUTE }) },
      }),
  );
}

export const reminder: EntryStroke = {
  key: "w",
  id: "remind",
  short: "remind",
  name: "remind me",
  opens: "line",
  takes:
    "minutes, then what for; with nothing after it: the next arrest dose · ok ends the reminder that is due first, +5 puts it off by five minutes",
  likely: ["arrested"],
  example: "w 15 blood gas",
  asks: () => "minutes, then what for (nothing: the next arrest dose)",
  read: ({ words: [first, ...rest] }, { run, at }) => {
    if (first?.toLowerCase() === "ok" && rest.length === 0) return ended(run);
    if (first?.startsWith("+") && rest.length === 0) return putOff(first, run, at);
    const text = rest.join(" ");
    return andThen(
      readMinutes(first),
      (minutes): Outcome<Draft> =>
        taken({
          kind: "reminder",
          dueAt: toIso({ ...at, ms: at.ms + minutes * MINUTE }),
          text: text === "" ? NEXT_DOSE : text,
          // Without a clamp no dose is waited for, and the reminder has to be seen all the same.
          about: text === "" && isOn(run.course, "clamp") ? "dose" : "other",
        }),
    );
  },
};
