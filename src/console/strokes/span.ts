/** b and x: bypass and the clamp, on or off. */
import { openAt } from "../../figures/checks.ts";
import { PHASES } from "../../figures/phase.ts";
import { type Course, isOn } from "../../figures/run.ts";
import { intervalsOf, isOnAt } from "../../figures/spans.ts";
import { type Outcome, refused, taken } from "../../format/outcome.ts";
import { listed } from "../../format/text.ts";
import type { Draft } from "../../record/entry.ts";
import type { Line } from "../line.ts";
import type { Context, EntryStroke } from "../stroke.ts";

/** The state a span goes to: what was said, else the other one than it was in at the time the entry is for. */
export function stateAsked(words: readonly string[], wasOnThen: boolean): Outcome<"on" | "off"> {
  const [word, ...rest] = words.map((one) => one.toLowerCase());
  if (word === undefined) return taken(wasOnThen ? "off" : "on");
  if ((word === "on" || word === "off") && rest.length === 0) return taken(word);
  return refused(`"${words.join(" ")}" says nothing here: press Enter alone, or type on or off.`);
}

const readSpan =
  (what: string) =>
  (line: Line, { run, at }: Context): Outcome<Draft> => {
    const state = stateAsked(line.words, isOnAt(intervalsOf(run.course.spans, what), at.ms));
    return state.ok ? taken({ kind: "span", what, state: state.value }) : state;
  };

const asksState =
  (what: string) =>
  ({ run }: Context) =>
    `Enter: ${what} ${isOn(run.course, what) ? "off" : "on"}`;

/** What is pointed out when bypass goes on or off; the entry is taken all the same. */
function stillOpen(draft: Draft, course: Course): string | null {
  if (draft.kind !== "span") return null;
  const { protocol, record, volumes, spans } = course;
  const goesOn = draft.state === "on";
  const open = openAt(protocol, record.facts, goesOn ? "bypass-on" : "bypass-off");
  const checks = listed(open.map(({ list, open: count }) => `${list.name} ${count} of ${list.items.length}`));
  const isFirst = goesOn && intervalsOf(spans, "bypass").length === 0;
  const primed = volumes.some(({ fact: { entry } }) => entry.direction === "in");
  const says = [
    ...(isFirst && !primed ? ["No prime is recorded (k)."] : []),
    ...(open.length > 0 ? [`Still open: ${checks} (c).`] : []),
  ];
  return says.length > 0 ? says.join(" ") : null;
}

export const bypass: EntryStroke = {
  key: "b",
  id: "bypass",
  short: "bypass",
  name: "bypass on / off",
  opens: "line",
  takes: "nothing; or on, off",
  likely: PHASES,
  example: "b",
  asks: asksState("bypass"),
  read: readSpan("bypass"),
  reminds: stillOpen,
};

export const clamp: EntryStroke = {
  key: "x",
  id: "clamp",
  short: "clamp",
  name: "clamp on / off",
  opens: "line",
  takes: "nothing; or on, off",
  likely: ["on bypass", "arrested", "reperfusing"],
  example: "x",
  asks: asksState("clamp"),
  read: readSpan("clamp"),
};
