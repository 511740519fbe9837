/** The figures a case is closed with: written into the closing entry, so that whoever reads it later can compare. */
import type { Run } from "./run.ts";

type ClosingFigure = {
  readonly name: string;
  /** Left out where it was not known. */
  readonly value?: number;
  /** UCUM code. */
  readonly unit: string;
};

/** Clocks in whole seconds and the balances, at the run's moment. */
export function closingFigures({ timers, course, coagulation }: Run): ClosingFigure[] {
  const seconds = (name: string, total: number | null) =>
    figure(name, total === null ? null : Math.floor(total / 1000), "s");
  const { heparinTotal, protamineGiven } = coagulation;
  return [
    seconds("bypassTime", timers.bypass.total),
    seconds("arrestTime", timers.arrest.total),
    ...Object.entries(course.balances).map(([name, { value, unit }]) => figure(name, value, unit)),
    figure("heparinTotal", heparinTotal.value, heparinTotal.unit),
    figure("protamineGiven", protamineGiven.value, protamineGiven.unit),
  ];
}

const figure = (name: string, value: number | null, unit: string): ClosingFigure =>
  value === null ? { name, unit } : { name, value, unit };
