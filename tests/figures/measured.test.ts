/** What was measured, and how long it is relied on. */
import { describe, expect, test } from "vitest";
import {
  haematocritSeries,
  latestGas,
  latestOf,
  latestReading,
  venousSaturationSeries,
  whyNot,
} from "../../src/figures/measured.ts";
import { runAt } from "../helpers/typed-case.ts";
import { byMosteller, entry, gas, readings, type Step, told, twoSquareMetres } from "./told-case.ts";

/** Whether the last reading is relied on at a moment, and why not. */
function holds(steps: readonly Step[], clock: string, name: Parameters<typeof latestReading>[1]) {
  const latest = latestReading(runAt(told(steps, byMosteller), clock), name);
  return latest?.holds ? true : whyNot(latest, name);
}

const flowAt = (clock: string, flow = 4.4) => readings(clock, { flow, nasopharyngealTemperature: 34 });

describe("a reading", () => {
  test("is relied on for as long as the protocol says, that moment included", () => {
    const steps = ["09:00 b", flowAt("09:10")];
    expect(holds(steps, "09:30", "flow")).toBe(true);
    expect(holds(steps, "09:30:01", "flow")).toBe("pump flow is too old (20 min)");
  });

  test("that was never taken is not there", () => {
    expect(holds(["09:00 b"], "09:10", "flow")).toBe("no flow recorded");
  });

  test("from before bypass says nothing of bypass, and one from bypass nothing of after", () => {
    const why = "pump flow is from before bypass went on or off (5 min)";
    expect(holds([flowAt("08:55"), "09:00 b"], "09:00", "flow")).toBe(why);
    expect(holds(["09:00 b", flowAt("09:10"), "09:15 b"], "09:15", "flow")).toBe(why);
    expect(holds(["09:00 b", flowAt("09:10"), "09:15 b"], "09:14:59", "flow")).toBe(true);
  });

  test("of the patient's own temperature goes on over that", () => {
    expect(holds([flowAt("08:55"), "09:00 b"], "09:05", "nasopharyngealTemperature")).toBe(true);
  });

  test("of the flow ends where clearly another flow is ordered", () => {
    const steps = [twoSquareMetres, "09:00 b", flowAt("09:10", 4.8)];
    const why = "pump flow is from before another flow was ordered (5 min)";
    expect(holds([...steps, "09:15 f 3/4"], "09:15", "flow")).toBe(why);
    expect(holds([...steps, "09:15 f full"], "09:15", "flow")).toBe(true);
    expect(holds([...steps, "09:15 f 4.3"], "09:15", "flow")).toBe(why);
    expect(holds([...steps, "09:15 f 4.4"], "09:15", "flow")).toBe(true);
  });

  test("put right is the one that counts", () => {
    const put = entry("09:11", { kind: "amend", target: "e3", changes: { values: { flow: 4.4 } } });
    const latest = latestReading(runAt(told(["09:00 b", flowAt("09:10", 44), put]), "09:12"), "flow");
    expect(latest).toMatchObject({ value: 4.4, age: 120_000 });
  });
});

describe("a gas", () => {
  const potassium = (clock: string) => gas(clock, { potassium: 4.4 });

  test("is relied on for longer, and over the end of bypass", () => {
    const run = (clock: string) => runAt(told(["09:00 b", potassium("09:10"), "09:40 b"]), clock);
    expect(latestGas(run("09:55"), "potassium")?.holds).toBe(true);
    expect(latestGas(run("09:55:01"), "potassium")?.holds).toBe(false);
  });

  test("from before the first bypass is not relied on once the prime is mixed in", () => {
    const latest = latestGas(runAt(told([potassium("08:50"), "09:00 b"]), "09:00"), "potassium");
    expect(whyNot(latest, "potassium")).toBe("potassium is from before bypass (10 min)");
  });

  test("from the first bypass still counts in the second", () => {
    const steps = ["09:00 b", potassium("09:40"), "09:50 b", "10:00 b"];
    expect(latestGas(runAt(told(steps), "10:05"), "potassium")?.holds).toBe(true);
  });

  test("of the other sample is another quantity", () => {
    const run = runAt(told([gas("09:10", { carbonDioxide: 44 }, "venous")]), "09:20");
    expect(latestGas(run, "carbonDioxide", "arterial")).toBeNull();
    expect(latestGas(run, "carbonDioxide")?.value).toBe(44);
  });
});

describe("what comes from two places", () => {
  const newest = (series: typeof haematocritSeries, steps: readonly Step[]) => {
    const run = runAt(told(steps), "10:00");
    return latestOf(series(run.course), run.now)?.value;
  };

  test("is the newer of the two: haematocrit from a gas or in line", () => {
    const steps = [gas("09:10", { haematocrit: 25 }), readings("09:20", { haematocrit: 26 })];
    expect(newest(haematocritSeries, steps)).toBe(26);
    expect(newest(haematocritSeries, [...steps, gas("09:30", { haematocrit: 27 }, "venous")])).toBe(27);
  });

  test("venous saturation from a venous gas or in line, never from an arterial gas", () => {
    const steps = [readings("09:10", { venousSaturation: 72 }), gas("09:20", { saturation: 99 })];
    expect(newest(venousSaturationSeries, steps)).toBe(72);
    expect(newest(venousSaturationSeries, [...steps, gas("09:30", { saturation: 70 }, "venous")])).toBe(70);
  });
});
