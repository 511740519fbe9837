/** What an advisory says of a case at a time of day, and the cases that the rows are made of. */
import { advisoriesOf } from "../../../src/figures/advisories/advisories.ts";
import type { Protocol } from "../../../src/protocol/protocol.ts";
import type { GasName, ReadingName } from "../../../src/record/quantities.ts";
import { runAt } from "../../helpers/typed-case.ts";
import { byMosteller, entry, gas, readings, type Step, told, twoSquareMetres } from "../told-case.ts";

export type At = { readonly steps: readonly Step[]; readonly clock: string; readonly protocol?: Protocol };

export const at = (clock: string, ...steps: Step[]): At => ({ steps, clock });

export const saying = (id: string, { steps, clock, protocol }: At): string | undefined =>
  advisoriesOf(runAt(told(steps, protocol), clock)).find((shown) => shown.id === id)?.text;

/** On bypass since 09:00 with heparin and an ACT at its target. */
export const onBypass: readonly Step[] = ["08:40 h 28000", "08:50 a 480", "09:00 b"];
export const run = (clock: string, ...steps: Step[]): At => at(clock, ...onBypass, ...steps);

export const read = (name: ReadingName, value: number): At =>
  run("09:20", readings("09:15", { [name]: value }));
export const sample = (name: GasName, value: number): At => run("09:20", gas("09:15", { [name]: value }));
export const bloods = (arterial: number, venous: number): At =>
  run("09:20", readings("09:15", { arterialTemperature: arterial, venousTemperature: venous }));

/** Warmed by so much in ten minutes, with the outlet at a temperature. */
export const warmed = (by: number, outlet: number): At =>
  run(
    "09:20",
    readings("09:05", { nasopharyngealTemperature: 30 }),
    readings("09:15", { nasopharyngealTemperature: 30 + by, arterialTemperature: outlet }),
  );

/** Hb and venous saturation at a flow of 4.8 L/min through two square metres. */
export const oxygen = (haemoglobin: number, venous: number, flow = 4.8): At => ({
  ...run(
    "09:20",
    twoSquareMetres,
    gas("09:15", { haemoglobin, saturation: 99, oxygen: 200 }),
    readings("09:15", { flow, venousSaturation: venous }),
  ),
  protocol: byMosteller,
});

/** Urine of so many millilitres in the first hour on bypass, at 80 kg. */
export const urine = (ml: number): At => run("10:05", twoSquareMetres, `10:00 u ${ml}`);

export const clockStep = entry("09:10", { kind: "clock", stepMs: 3_600_000 });

export type Row = readonly [id: string, why: string, speaks: At, silent: At, text: string];
