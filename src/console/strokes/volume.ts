/** v u o r l: volumes in, urine, other volumes out, volume returned, levels. */

import { PHASES } from "../../figures/phase.ts";
import { plain } from "../../format/number.ts";
import { andThen, type Outcome, refused, taken } from "../../format/outcome.ts";
import { listed } from "../../format/text.ts";
import type { Draft } from "../../record/entry.ts";
import { volumeOf } from "../amounts.ts";
import { readChecked } from "../checked.ts";
import type { Line } from "../line.ts";
import type { Context, EntryStroke } from "../stroke.ts";

type Fluid = { letter: string; id: string; name: string };

const letters = (fluids: readonly Fluid[]) =>
  listed(
    fluids.map(({ letter, name }) => `${letter} ${name}`),
    "or",
  );

/** Millilitres and a fluid letter in any order, `500 c`, `500c` or `c 500`. */
export function readFluid(
  words: readonly string[],
  fluids: readonly Fluid[],
): Outcome<{ ml: number; fluid: string }> {
  const joined = words.join("").toLowerCase();
  if (joined === "") return refused(`Nothing typed: type millilitres and a letter: ${letters(fluids)}.`);
  // No fluid has the letter l: behind a number it means litres.
  const found = /^([a-km-z])(\d.*)$|^(\d.*)([a-km-z])$/.exec(joined);
  const letter = found?.[1] ?? found?.[4];
  return andThen(volumeOf(found?.[2] ?? found?.[3] ?? joined), (ml) => {
    if (letter === undefined) return refused(`Which fluid: add a letter, ${letters(fluids)}.`);
    const fluid = fluids.find((one) => one.letter === letter);
    return fluid
      ? taken({ ml, fluid: fluid.id })
      : refused(`"${letter}" is no fluid here: type one of ${letters(fluids)}.`);
  });
}

/** One word that is millilitres, for lines that take nothing else. */
export function readMl(words: readonly string[]): Outcome<number> {
  if (words.length === 0)
    return refused("Nothing typed: type millilitres such as 300, or litres such as 1.2L.");
  return volumeOf(words.join(""));
}

const fluidChoices = (fluids: readonly Fluid[]) => fluids.map(({ letter, name }) => [letter, name] as const);

export const volumeIn: EntryStroke = {
  key: "v",
  id: "volume-in",
  short: "in",
  name: "volume in",
  opens: "line",
  takes: "mL and a fluid letter; for a blood product #unit number and /AB, the second person's initials",
  likely: ["before", "on bypass", "arrested", "reperfusing", "after"],
  example: "v 500 c",
  asks: () => "mL and a fluid letter",
  choices: ({ run }) => fluidChoices(run.course.protocol.fluidsIn),
  read: ({ words }, { run }) => {
    const { words: rest, ...checked } = readChecked(words);
    return andThen(
      readFluid(rest, run.course.protocol.fluidsIn),
      (said): Outcome<Draft> => taken({ kind: "volume", direction: "in", ...said, ...checked }),
    );
  },
  reminds: (draft, { protocol }) => {
    const fluid = draft.kind === "volume" && protocol.fluidsIn.find(({ id }) => id === draft.fluid);
    if (!fluid) return null;
    if (fluid.askUnitNumber && !draft.unitNumber)
      return "The protocol asks for the unit number: add # and the number.";
    return fluid.askSecondPerson && !draft.checkedBy
      ? "The protocol asks for a second person: add /AB."
      : null;
  },
};

export const volumeOut: EntryStroke = {
  key: "o",
  id: "volume-out",
  short: "out",
  name: "other volume out",
  opens: "line",
  takes: "mL and a letter: ultrafiltrate, shed, discarded, to salvage",
  likely: ["after"],
  example: "o 400 u",
  asks: () => "mL and a letter",
  choices: ({ run }) => fluidChoices(run.course.protocol.fluidsOut),
  read: ({ words }, { run }) =>
    andThen(
      readFluid(words, run.course.protocol.fluidsOut),
      (said): Outcome<Draft> => taken({ kind: "volume", direction: "out", ...said }),
    ),
};

/** Urine recorded up to the moment of the entry, in mL: nearly always all of it. */
function urineBefore({ run, at }: Context): number {
  const { volumes, balances } = run.course;
  if ((volumes.at(-1)?.fact.at ?? 0) <= at.ms) return balances.urine.value ?? 0;
  return volumes.reduce((sum, { fact, ml }) => {
    const { direction, fluid } = fact.entry;
    return fact.at <= at.ms && direction === "out" && fluid === "urine" ? sum + ml : sum;
  }, 0);
}

/** `=450` is what the bag reads in all; a bare number is new urine. */
export function readUrine(
  words: readonly string[],
  before: number,
): Outcome<{ ml: number } | { bagTotal: number }> {
  const joined = words.join("");
  if (!joined.startsWith("=")) return andThen(readMl(words), (ml) => taken({ ml }));
  return andThen(
    volumeOf(joined.slice(1)),
    (bagTotal): Outcome<{ bagTotal: number }> =>
      bagTotal < before
        ? refused(
            `The bag cannot read ${plain(bagTotal)} mL when ${plain(before)} mL are recorded already: type new millilitres without =, or put the wrong entry right (z).`,
          )
        : taken({ bagTotal }),
  );
}

export const urine: EntryStroke = {
  key: "u",
  id: "urine",
  short: "urine",
  name: "urine",
  opens: "line",
  takes: "mL, or =450 when the bag reads 450 in all",
  likely: ["on bypass", "arrested", "reperfusing", "after"],
  example: "u =450",
  asks: (context) => `mL, or =total of the bag (${plain(urineBefore(context))} so far)`,
  read: ({ words }, context) =>
    andThen(
      readUrine(words, urineBefore(context)),
      (said): Outcome<Draft> => taken({ kind: "volume", direction: "out", fluid: "urine", ...said }),
    ),
};

export const returned: EntryStroke = {
  key: "r",
  id: "returned",
  short: "return",
  name: "returned to the patient",
  opens: "line",
  takes: "mL",
  likely: ["after"],
  example: "r 100",
  asks: ({ run }) =>
    run.pump.left.value === null ? "mL" : `mL (${plain(run.pump.left.value)} left in the pump)`,
  read: ({ words }) =>
    andThen(
      readMl(words),
      (ml): Outcome<Draft> => taken({ kind: "volume", direction: "returned", fluid: "pump-blood", ml }),
    ),
};

export const level: EntryStroke = {
  key: "l",
  id: "level",
  short: "level",
  name: "level",
  opens: "line",
  takes: "mL in the reservoir, or left in the pump",
  likely: PHASES.filter((phase) => phase !== "before"),
  example: "l 800",
  asks: ({ run }) => (run.course.phase === "after" ? "mL left in the pump" : "mL in the reservoir"),
  read: (line: Line) => andThen(readMl(line.words), (ml): Outcome<Draft> => taken({ kind: "level", ml })),
};
