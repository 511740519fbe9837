/** Urine on bypass, by weight and time. */
import { expect, test } from "vitest";
import { urineRate } from "../../src/figures/urine-on-bypass.ts";
import { runAt } from "../helpers/typed-case.ts";
import { told, twoSquareMetres } from "./told-case.ts";

const rate = (clock: string, ...lines: string[]) =>
  urineRate(runAt(told([twoSquareMetres, ...lines]), clock));

test("is over the time on bypass until the last urine was recorded, not until now", () => {
  const lines = ["09:00 b", "09:30 u 40", "10:00 u 40"];
  expect(rate("10:00", ...lines).value).toBe(1);
  expect(rate("11:30", ...lines).value).toBe(1);
});

test("leaves out urine from before bypass and after it, and the time between two runs", () => {
  expect(rate("12:00", "08:50 u 300", "09:00 b", "10:00 u 80", "10:10 b", "10:20 u 500").value).toBe(1);
  const twice = ["09:00 b", "09:30 u 40", "09:30:01 b", "10:00:01 b", "10:30:01 u 40"];
  expect(rate("12:00", ...twice).value).toBeCloseTo(1, 2);
});

test("a bag first read on bypass holds urine from before it: counting begins there", () => {
  const lines = ["09:00 b", "09:10 u =400"];
  expect(rate("09:30", ...lines).value).toBeNull();
  expect(rate("10:10", ...lines, "10:10 u =480").value).toBe(1);
  expect(rate("10:00", "08:55 u =400", "09:00 b", "10:00 u =480").value).toBe(1);
});

test("what was not recorded is not nought", () => {
  expect(rate("10:00", "09:00 b")).toMatchObject({ value: null, working: "no urine recorded on bypass" });
  expect(urineRate(runAt(told(["09:00 b", "10:00 u 50"]), "10:00")).working).toBe("no weight recorded");
});
