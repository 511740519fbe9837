/** The volumes reconciled, with their arithmetic. */
import { expect, test } from "vitest";
import { INVENTED } from "../../src/commands/invented/index.ts";
import { reconciliation } from "../../src/figures/reconciliation.ts";
import { readRun } from "../../src/figures/run.ts";
import { at, runAt } from "../helpers/typed-case.ts";
import { caseOf } from "../samples/samples.ts";
import { told } from "./told-case.ts";

const lines = (...typed: string[]) => reconciliation(runAt(told(typed), "12:00"));

test("every line shows its sum", () => {
  const run = ["08:00 v 1300 f", "09:00 b", "09:10 d 1000", "09:20 v 500 c", "09:30 u 200", "09:50 o 300 u"];
  const end = ["10:00 b", "10:01 l 900", "10:10 r 250", "10:20 r 150"];
  expect(lines(...run, ...end)).toEqual([
    "in        1300 prime + 500 crystalloid +",
    "          200 crystalloid of arrest solution = 2000 mL",
    "out       200 urine + 300 ultrafiltrate = 500 mL",
    "net       in 2000 − out 500 = +1500 mL",
    "returned  250 + 150 = 400 mL, from the pump to the patient",
    "left      level 900 + in 0 − returned 400 − out of the pump 0 = 500 mL",
    "patient   net 1500 − left in the pump 500 = +1000 mL",
  ]);
});

test("volumes of one fluid are one term", () => {
  expect(lines("09:00 v 250 c", "09:10 v 250 c")[0]).toBe("in        500 crystalloid = 500 mL");
});

test("what was not recorded says so, and is not nought", () => {
  expect(lines()).toEqual([
    "in        no volume in recorded",
    "out       no volume out recorded",
    "net       no volume recorded",
    "returned  nothing returned",
    "left      no level recorded",
    "patient   bypass has not ended",
  ]);
});

test("the lines of the sample cases fit 76 columns", () => {
  for (const script of INVENTED) {
    const file = caseOf(script);
    for (const line of reconciliation(readRun(file, at("23:00").ms + 30 * 86_400_000)))
      expect(line.length, line).toBeLessThanOrEqual(76);
  }
});
