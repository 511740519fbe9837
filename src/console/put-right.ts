/** z: what is typed to put an entry right, as a correction: a new amount, a new time, or a strike-out. */

import { sumOf } from "../figures/volumes.ts";
import { MINUTE } from "../format/duration.ts";
import { toIso } from "../format/instant.ts";
import { andThen, type Outcome, refused, taken } from "../format/outcome.ts";
import { spanName } from "../protocol/names.ts";
import { fits } from "../record/correcting.ts";
import type { Draft, Entry } from "../record/entry.ts";
import type { Fact } from "../record/standing.ts";
import { numberOf } from "./amounts.ts";
import type { Line } from "./line.ts";
import type { Context } from "./stroke.ts";
import { readActSeconds, readHeparin, readProtamine } from "./strokes/coagulation.ts";
import { readDoseWords } from "./strokes/dose.ts";
import { readMark } from "./strokes/mark.ts";
import { readCelsius, readFlow, readMinutes } from "./strokes/orders.ts";
import { readFluid, readMl, readUrine } from "./strokes/volume.ts";

type Changes = { [field: string]: string | number | null };

/** Whether an entry can be put right by hand. */
export const canBePutRight = ({ kind }: Entry): boolean =>
  kind !== "amend" &&
  kind !== "void" &&
  kind !== "opened" &&
  kind !== "closed" &&
  kind !== "reopened" &&
  kind !== "clock";

/** Splits a leading `#12` off the words. */
export function pickedBy(words: readonly string[]): { id: string | null; words: readonly string[] } {
  const [first, ...rest] = words;
  const found = /^#e?([1-9]\d*)$/.exec(first ?? "");
  return found ? { id: `e${found[1]}`, words: rest } : { id: null, words };
}

/** The correction the words mean for an entry, or one sentence that says why they mean none. */
export function readCorrection(fact: Fact, line: Line, context: Context): Outcome<Draft> {
  const { words } = pickedBy(line.words);
  const { entry } = fact;
  if (!canBePutRight(entry))
    return refused(`${entry.id} cannot be put right by hand: pick another entry with the arrows.`);
  if (words[0]?.startsWith("!")) return readStrike(fact, words);
  if (fact.struck) return readBack(fact, words);
  const changes = andThen(
    words.length > 0 ? readChanges(fact, words, context) : taken<Changes>({}),
    (changed): Outcome<Changes> => taken(line.at ? { ...changed, at: toIso(line.at) } : changed),
  );
  return andThen(changes, (made): Outcome<Draft> => {
    if (Object.keys(made).length === 0)
      return refused(
        "Nothing typed: type a new amount, a time such as @10:42, or ! and a reason to strike it out.",
      );
    if (!fits(entry, made))
      return refused("That would not be a valid entry: type the amount as you would for a new one.");
    return taken({ kind: "amend", target: entry.id, changes: made });
  });
}

function readStrike({ entry, struck }: Fact, words: readonly string[]): Outcome<Draft> {
  if (struck) return refused(`${entry.id} is struck out already: type back to take the strike back.`);
  const reason = words.join(" ").slice(1).trim();
  return reason === ""
    ? refused("No reason given: type ! and why it is struck out.")
    : taken({ kind: "void", target: entry.id, reason });
}

function readBack({ entry, corrections }: Fact, words: readonly string[]): Outcome<Draft> {
  const strike = corrections.findLast(({ kind }) => kind === "void");
  if (words.join(" ").toLowerCase() !== "back" || !strike)
    return refused(`${entry.id} is struck out: type back to take the strike back.`);
  return taken({ kind: "void", target: strike.id, reason: `${entry.id} taken back` });
}

/** New values for an entry's fields, read by the same grammar as a new entry's. */
function readChanges({ entry, at }: Fact, words: readonly string[], context: Context): Outcome<Changes> {
  const { protocol, volumes } = context.run.course;
  switch (entry.kind) {
    case "dose":
      return andThen(readDoseWords(words), ({ ml, soFar, route }) =>
        soFar
          ? refused("A dose is put right by its millilitres: type them without +.")
          : taken({ ...(ml === undefined ? {} : { ml }), ...(route ? { route } : {}) }),
      );
    case "volume": {
      if (entry.direction === "returned") return andThen(readMl(words), (ml) => taken<Changes>({ ml }));
      if (entry.fluid !== "urine") {
        const fluids = entry.direction === "in" ? protocol.fluidsIn : protocol.fluidsOut;
        const amount = readMl(words);
        return amount.ok ? taken<Changes>({ ml: amount.value }) : readFluid(words, fluids);
      }
      const earlier = volumes.filter(
        ({ fact }) => fact.at < at || (fact.at === at && fact.entry.seq < entry.seq),
      );
      const before = sumOf(earlier, ({ fluid }) => fluid === "urine") ?? 0;
      return andThen(readUrine(words, before), (said) =>
        taken<Changes>(
          "ml" in said ? { ml: said.ml, bagTotal: null } : { bagTotal: said.bagTotal, ml: null },
        ),
      );
    }
    case "level":
      return andThen(readMl(words), (ml) => taken<Changes>({ ml }));
    case "drug":
      if (entry.name === "heparin")
        return andThen(readHeparin(words, protocol), (amount) => taken<Changes>({ amount }));
      if (entry.name === "protamine")
        return andThen(readProtamine(words), (amount) => taken<Changes>({ amount }));
      return readAmount(words);
    case "act":
      return andThen(readActSeconds(words), (seconds) => taken<Changes>({ seconds }));
    case "flow":
      return andThen(readFlow(words), (order) =>
        taken<Changes>({ fraction: null, litresPerMinute: null, ...order }),
      );
    case "target":
      return andThen(readCelsius(words), (celsius) => taken<Changes>({ celsius }));
    case "moment":
    case "span":
      return readOtherMark(entry, words, context);
    case "reminder":
      return andThen(readMinutes(words.join(" ")), (minutes) =>
        taken<Changes>({ dueAt: toIso({ ...context.at, ms: at + minutes * MINUTE }) }),
      );
    case "note":
    case "incident":
      return taken<Changes>({ text: words.join(" ") });
    default:
      return refused(
        "Only the time of this entry can be changed: type @10:42, or ! and a reason to strike it out.",
      );
  }
}

function readAmount(words: readonly string[]): Outcome<Changes> {
  const amount = numberOf(words.join(""));
  return amount === null
    ? refused(`"${words.join(" ")}" is not a number: type the new amount alone.`)
    : taken({ amount });
}

/** A span may change between on and off, a moment or span of the list to another of its sort. */
function readOtherMark(
  entry: Extract<Entry, { kind: "span" | "moment" }>,
  words: readonly string[],
  { run }: Context,
): Outcome<Changes> {
  const { protocol } = run.course;
  const state = words.join(" ").toLowerCase();
  if (entry.kind === "span" && (state === "on" || state === "off")) return taken({ state });
  const listed = protocol.marks.some(({ id }) => id === entry.what);
  if (!listed)
    return refused(
      `${spanName(entry.what, protocol)} can be put right so: type on or off, a time such as @10:42, or ! and a reason to strike it out.`,
    );
  return andThen(
    readMark(
      words,
      protocol.marks.filter(({ sort }) => sort === entry.kind),
    ),
    ({ mark, way, rest }) =>
      rest.length > 0
        ? refused("It can be put right to another of the list: type its letter alone.")
        : taken<Changes>({ what: mark.id, ...(entry.kind === "span" ? { way: way ?? null } : {}) }),
  );
}
