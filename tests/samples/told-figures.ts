// What the program says of a case at a moment, line by line, in the words of the hand-made tables.

import type { Dose } from "../../src/figures/doses.ts";
import { ROUTE_NAMES } from "../../src/figures/entry-words.ts";
import type { Figure } from "../../src/figures/figure.ts";
import { indicatorsOf } from "../../src/figures/indicators.ts";
import { liveFigures } from "../../src/figures/live-figures.ts";
import type { Run } from "../../src/figures/run.ts";
import { intervalsOf } from "../../src/figures/spans.ts";
import { type Timer, timerOf } from "../../src/figures/timers.ts";
import type { Volume } from "../../src/figures/volumes.ts";
import { minutesText, stopwatch } from "../../src/format/duration.ts";
import { clockTime } from "../../src/format/instant.ts";
import { fixed, plain, UNKNOWN } from "../../src/format/number.ts";
import { unitText } from "../../src/format/unit.ts";
import { crystalloidPart } from "../../src/protocol/protocol.ts";

type Told = [figure: string, value: string];

/** Every figure of the tables at the run's own moment; `offset` is that of the place, in minutes. */
export function toldFigures(run: Run, offset: number): Told[] {
  const { course, timers, coagulation } = run;
  const clock = (ms: number) => clockTime({ ms, offset });
  const cerebral = intervalsOf(course.spans, "cerebral-perfusion");
  return [
    ...told("bypass", timers.bypass, run.now, clock),
    ...told("arrest", timers.arrest, run.now, clock),
    ...told("circulatory arrest", timers.circulatoryArrest, run.now, clock),
    ...(cerebral.length > 0 ? told("cerebral perfusion", timerOf(cerebral, run.now), run.now, clock) : []),
    ["reperfusion", length(timers.reperfusion.total)],
    ...course.doses.map((dose, place) => toldDose(dose, place + 1, clock)),
    ["arrest solution given", mL(course.balances.arrestGiven)],
    ["crystalloid of it", mL(course.balances.arrestCrystalloid)],
    ["since the last dose", length(run.nextDose.since)],
    ["next dose due", run.nextDose.due === null ? UNKNOWN : clock(run.nextDose.due)],
    ...toldBalances(run, clock),
    ["first heparin", amount(coagulation.heparinFirst)],
    ["all heparin", amount(coagulation.heparinTotal)],
    ["heparin for each kilogram", amount(coagulation.heparinPerKg)],
    ["protamine on the first heparin", amount(coagulation.protamineOnFirst)],
    ["protamine on all heparin", amount(coagulation.protamineOnTotal)],
    ["protamine given", amount(coagulation.protamineGiven)],
    ...toldDerived(run),
  ];
}

/** Decimals of indicators that are told with any. */
const DECIMALS: Readonly<Record<string, number>> = {
  outlet: 1,
  "delivery-minutes": 1,
  "haematocrit-lowest": 1,
  "pressure-below": 1,
  "venous-saturation-below": 1,
  lactate: 1,
};

function toldDerived(run: Run): Told[] {
  const { resistance, delivery, extraction } = liveFigures(run);
  const indicators = indicatorsOf(run).filter(({ id }) => id !== "urine");
  return [
    ["SVR", amount(resistance)],
    ["DO2i", amount(delivery)],
    ["O2ER", amount(extraction)],
    ...indicators.map(({ id, name, value, verdict }): Told => {
      const told = value.value === null ? UNKNOWN : fixed(value.value, DECIMALS[id] ?? 0);
      return [name, `${told} ${unitText(value.unit)}, ${verdict}`];
    }),
  ];
}

type Clock = (ms: number) => string;

const length = (ms: number | null) => (ms === null ? UNKNOWN : `${stopwatch(ms)} (${minutesText(ms)})`);
const mL = ({ value }: Figure) => (value === null ? UNKNOWN : `${plain(value)} mL`);
const amount = ({ value, unit }: Figure) => (value === null ? UNKNOWN : `${fixed(value)} ${unitText(unit)}`);

function told(name: string, { total, intervals }: Timer, now: number, clock: Clock): Told[] {
  const each = intervals.map(({ from, to }, place): Told => {
    const when = to === null ? `from ${clock(from)}` : `${clock(from)} to ${clock(to)}`;
    return [`${name} ${place + 1}, ${when}`, length((to ?? now) - from)];
  });
  return [...each, [`${name} in all`, length(total)]];
}

function toldDose({ start, end, ml, route, solution }: Dose, number: number, clock: Clock): Told {
  const when =
    end === null ? `from ${clock(start)}` : end === start ? clock(start) : `${clock(start)} to ${clock(end)}`;
  const where = route === undefined ? "no route" : ROUTE_NAMES[route];
  const part = solution === undefined ? 0 : crystalloidPart(solution);
  const given = ml === null ? UNKNOWN : `${plain(ml)} mL, crystalloid ${plain(ml * part)} mL`;
  return [`dose ${number}, ${where}, ${when}`, given];
}

function toldBalances({ course, pump, netToPatient }: Run, clock: Clock): Told[] {
  const { balances, protocol, volumes } = course;
  const names = new Map([...protocol.fluidsIn, ...protocol.fluidsOut].map(({ id, name }) => [id, name]));
  const each = (test: (volume: Volume["fact"]["entry"]) => boolean) =>
    volumes
      .filter(({ fact }) => test(fact.entry))
      .map(({ fact, ml }): Told => {
        const { direction, fluid } = fact.entry;
        const what = direction === "returned" ? "" : `, ${names.get(fluid) ?? fluid}`;
        return [`${direction} at ${clock(fact.at)}${what}`, `${plain(ml)} mL`];
      });
  const isOut = (fluid: string) => each((entry) => entry.direction === "out" && entry.fluid === fluid);
  const otherOut = each(
    ({ direction, fluid }) => direction === "out" && fluid !== "urine" && fluid !== "ultrafiltrate",
  );
  return [
    ...each(({ direction }) => direction === "in"),
    ["fluid in", mL(balances.fluidIn)],
    ...isOut("urine"),
    ["urine", mL(balances.urine)],
    ...isOut("ultrafiltrate"),
    ["ultrafiltrate", mL(balances.ultrafiltrate)],
    ...otherOut,
    ["other out", mL(balances.otherOut)],
    ["out", mL(balances.out)],
    ["net", mL(balances.net)],
    ...each(({ direction }) => direction === "returned"),
    ["returned", mL(balances.returned)],
    ["left in the pump", mL(pump.left)],
    ...(course.phase === "after" ? [["net to the patient", mL(netToPatient)] satisfies Told] : []),
  ];
}
