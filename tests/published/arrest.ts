/** Arrest solution: its parts, its doses and when the next is due. */
import { known } from "../../src/figures/figure.ts";
import { crystalloidOf, solutionDose } from "../../src/figures/planned-doses.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import type { Solution } from "../../src/protocol/arrest.ts";
import { solutionOf } from "../../src/protocol/protocol.ts";
import { minutes, runAt, typed } from "../helpers/typed-case.ts";
import { type Check, group, type Section } from "./check.ts";

const PARTS = "total × crystalloid / (blood + crystalloid)";
const ONE_TO_FOUR =
  "ratio of 1:4: Matte GS, del Nido PJ. J Extra Corpor Technol 2012;44:98–103 (erratum 2013;45:262)";
const DOSE = "from memory: 20 mL/kg, at the most 1000 mL";

const shipped = (id: string): Solution => {
  const solution = solutionOf(adultProtocol, id);
  if (solution?.id !== id) throw new Error(`no solution ${id} is shipped`);
  return solution;
};
const oneToFour = shipped("one-to-four");

/** The crystalloid part of a dose that was given. */
const inARun = (solution: string, ml: number) =>
  runAt(typed([`09:10 d ${ml}`], { ...adultProtocol, usualSolution: solution }), "12:00").course.balances
    .arrestCrystalloid;

const TABLE: readonly (readonly [solution: string, ml: number, blood: number, crystalloid: number])[] = [
  ["blood-4-1", 1000, 800, 200],
  ["blood-4-1", 750, 600, 150],
  ["one-to-four", 1000, 200, 800],
  ["one-to-four", 600, 120, 480],
  ["blood-8-1", 900, 800, 100],
  ["crystalloid", 1800, 0, 1800],
];

const parts: Check[] = TABLE.flatMap(([id, ml, blood, crystalloid]) => [
  ...group({ what: "crystalloid of a dose given", source: PARTS, sureness: "C" }, [
    [`crystalloid-${id}-${ml}`, `${id}, ${ml} mL`, crystalloid, 1e-9, () => inARun(id, ml)],
  ]),
  ...group({ what: "blood of a dose", source: PARTS, sureness: "C" }, [
    [`blood-${id}-${ml}`, `${id}, ${ml} mL`, blood, 1e-9, () => ml - (part(id, ml).value ?? Number.NaN)],
  ]),
]);

function part(id: string, ml: number) {
  return crystalloidOf(known(ml, "mL", "given"), shipped(id));
}

const CAPPED: readonly (readonly [kg: number, ml: number, crystalloid: number])[] = [
  [5, 100, 80],
  [20, 400, 320],
  [50, 1000, 800],
  [70, 1000, 800],
  [110, 1000, 800],
];

const dose = (weight: number) => solutionDose(oneToFour.first, { weight });

const doses: Check[] = CAPPED.flatMap(([kg, ml, crystalloid]) => [
  ...group({ what: "first dose of the 1:4 solution", source: DOSE, sureness: "M" }, [
    [`dose-${kg}`, `${kg} kg`, ml, 1e-9, () => dose(kg)],
  ]),
  ...group({ what: "crystalloid in it", source: `${ONE_TO_FOUR}; the dose from memory`, sureness: "C" }, [
    [`crystalloid-of-dose-${kg}`, `${kg} kg`, crystalloid, 1e-9, () => crystalloidOf(dose(kg), oneToFour)],
  ]),
]);

function minutesToNext(usualSolution: string): number | null {
  const lines = ["09:00 x", "09:10 d", "09:14 d 300"];
  const run = runAt(typed(lines, { ...adultProtocol, usualSolution }), "09:14");
  return run.nextDose.due === null ? null : (run.nextDose.due - run.now) / minutes(1);
}

export const arrest: Section = {
  name: "arrest",
  checks: [
    ...parts,
    ...doses,
    ...group(
      {
        what: "minutes from the end of a dose to the next",
        source: "common practice, no source: about every 20 minutes",
        sureness: "M",
      },
      [["interval-blood", "4:1 solution", 20, 0, () => minutesToNext("blood-4-1")]],
    ),
    ...group(
      {
        what: "minutes from the end of a dose to the next",
        source: "a single dose protects for about 90 min: PMC8828514",
        sureness: "Q",
      },
      [["interval-one-to-four", "1:4 solution", 90, 0, () => minutesToNext("one-to-four")]],
    ),
  ],
};
