/** Every advisory speaks exactly when it should, and is silent one unit to the other side. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { advisoriesOf } from "../../src/figures/advisories/advisories.ts";
import { toldApart } from "../../src/figures/advisories/advisory.ts";
import { ADVISORIES } from "../../src/figures/advisories/table.ts";
import { readRun } from "../../src/figures/run.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import { paediatricProtocol } from "../../src/protocol/paediatric.ts";
import type { Protocol } from "../../src/protocol/protocol.ts";
import type { GasName } from "../../src/record/quantities.ts";
import { anyRun, play } from "../helpers/random-run.ts";
import { runAt } from "../helpers/typed-case.ts";
import { FLOW_BLOOD_VOLUMES_AND_RECORD } from "./advisories/rows-of-flow-blood-volumes-and-record.ts";
import { HEPARIN_ARREST_AND_TEMPERATURE } from "./advisories/rows-of-heparin-arrest-and-temperature.ts";
import { at, clockStep, onBypass, run, sample, saying } from "./advisories/said.ts";
import { entry, gas, readings, type Step, told, twoSquareMetres } from "./told-case.ts";

const TABLE = [...HEPARIN_ARREST_AND_TEMPERATURE, ...FLOW_BLOOD_VOLUMES_AND_RECORD];

describe.each(TABLE)("%s: %s", (id, _, speaks, silent, text) => {
  test("speaks, with the number against the limit", () => {
    expect(saying(id, speaks)).toBe(text);
  });

  test("is silent one unit to the other side", () => {
    expect(saying(id, silent)).toBeUndefined();
  });
});

describe("the table", () => {
  const ids = ADVISORIES.map(({ id }) => id);

  test("names every advisory once, and each is tested here", () => {
    expect(ids).toEqual([...new Set(ids)]);
    expect(ids.filter((id) => !TABLE.some(([tested]) => tested === id))).toEqual([]);
  });

  test("reads values that a protocol has", () => {
    const under = (value: unknown, path: string) =>
      path.split(".").reduce((inner, key) => (inner as Record<string, unknown> | undefined)?.[key], value);
    for (const { reads } of ADVISORIES)
      for (const path of reads) expect(under(adultProtocol, path), path).toBeDefined();
  });

  test("gives the source of every limit of the shipped protocol", () => {
    for (const [id, , { steps, clock, protocol }] of TABLE) {
      const shown = advisoriesOf(runAt(told(steps, protocol), clock)).find((one) => one.id === id);
      const { reads } = ADVISORIES.find((one) => one.id === id) ?? { reads: [] };
      if (reads.length > 0 && !shown?.text.includes("by order")) expect(shown?.source, id).toMatch(/\w{4}/);
    }
  });

  test("says one sentence", () => {
    for (const [, , , , text] of TABLE) expect(text).toMatch(/^[A-Z#2].*[^.]\.$/);
  });
});

describe("what is not known says nothing", () => {
  test("a value that is too old", () => {
    expect(saying("pressure-low", run("09:35", readings("09:15", { meanPressure: 40 })))).toBeDefined();
    expect(saying("pressure-low", run("09:35:01", readings("09:15", { meanPressure: 40 })))).toBeUndefined();
    expect(saying("glucose-high", run("10:00", gas("09:15", { glucose: 12 })))).toBeDefined();
    expect(saying("glucose-high", run("10:00:01", gas("09:15", { glucose: 12 })))).toBeUndefined();
  });

  test("a case with nothing in it but its opening", () => {
    expect(advisoriesOf(runAt(told([]), "12:00"))).toEqual([]);
  });

  test("a rate of warming from one reading", () => {
    const once = readings("09:15", { nasopharyngealTemperature: 36, arterialTemperature: 36.5 });
    expect(saying("warming-rate", run("09:20", once))).toBeUndefined();
  });
});

describe("limits for the whole body", () => {
  const values = readings("09:15", { meanPressure: 30, arterialTemperature: 37 });

  test("are not looked at off bypass", () => {
    const off = at("09:20", values);
    expect([saying("pressure-low", off), saying("outlet-limit", off)]).toEqual([undefined, undefined]);
  });

  test("of pressure are not looked at in circulatory arrest or cerebral perfusion", () => {
    for (const mark of ["m a", "m ca"])
      expect(saying("pressure-low", run("09:20", `09:10 ${mark}`, values))).toBeUndefined();
    expect(saying("pressure-low", run("09:20", "09:10 m a", "09:14 m a", values))).toBeDefined();
  });
});

describe("in the units that a protocol shows", () => {
  const shown: Protocol = {
    ...adultProtocol,
    shown: { ...adultProtocol.shown, gasPressure: "kPa", glucose: "mg/dL" },
  };

  test("value and limit are both converted, and never read the same", () => {
    const of = (id: string, name: GasName, value: number) =>
      saying(id, { ...sample(name, value), protocol: shown });
    expect(of("carbon-dioxide-low", "carbonDioxide", 33)).toBe("PaCO2 4.4 kPa is below 4.7 kPa.");
    expect(of("carbon-dioxide-low", "carbonDioxide", 34.9)).toBe("PaCO2 4.65 kPa is below 4.67 kPa.");
    expect(of("glucose-high", "glucose", 11)).toBe("Glucose 198 mg/dL is above 180 mg/dL.");
  });

  test("two numbers that round to the same get more decimals", () => {
    expect(toldApart(279.6, 280, 0)).toEqual(["279.6", "280"]);
    expect(toldApart(279.96, 280, 0)).toEqual(["279.96", "280"]);
    expect(toldApart(275.2, 280, 0)).toEqual(["275", "280"]);
  });
});

describe("the order", () => {
  test("is by priority, then the longest standing first", () => {
    const steps = run(
      "09:30",
      readings("09:15", { meanPressure: 40 }),
      gas("09:12", { potassium: 6.5 }),
      "09:20 a 400",
      clockStep,
    );
    const shown = advisoriesOf(runAt(told(steps.steps), steps.clock));
    expect(shown.map(({ id }) => id)).toEqual([
      "act-under",
      "potassium-high",
      "pressure-low",
      "clock-stepped",
    ]);
    expect(shown.map(({ age }) => age / 60_000)).toEqual([10, 18, 15, 20]);
  });
});

describe("an answer", () => {
  const low = (clock: string, meanPressure = 40) => readings(clock, { meanPressure });
  const answer = (clock: string, advisory = "pressure-low") =>
    entry(clock, { kind: "acknowledged", advisory, reason: "surgeon knows" });
  const answered = (clock: string, ...steps: Step[]) => {
    const all = run(clock, "09:12 a 490", ...steps);
    return advisoriesOf(runAt(told(all.steps), all.clock)).map(({ id, acknowledged }) => [
      id,
      acknowledged?.entry.reason ?? null,
    ]);
  };

  test("marks the advisory, and it goes behind those without one", () => {
    const steps = [low("09:15"), gas("09:16", { potassium: 6.5 }), clockStep];
    expect(answered("09:20", ...steps, answer("09:17"))).toEqual([
      ["potassium-high", null],
      ["clock-stepped", null],
      ["pressure-low", "surgeon knows"],
    ]);
  });

  test("written in the same moment as the entry that brought it about, but after it, holds", () => {
    expect(answered("09:20", low("09:15"), answer("09:15"))).toEqual([["pressure-low", "surgeon knows"]]);
    expect(answered("09:20", answer("09:15"), low("09:15"))).toEqual([["pressure-low", null]]);
  });

  test("ends with a newer entry that says the same again", () => {
    expect(answered("09:20", low("09:15"), answer("09:16"), low("09:18", 39))).toEqual([
      ["pressure-low", null],
    ]);
  });

  test("ends when the entry is put right", () => {
    const put = entry("09:17", { kind: "amend", target: "e6", changes: { values: { meanPressure: 30 } } });
    expect(answered("09:20", low("09:15"), answer("09:16"), put)).toEqual([["pressure-low", null]]);
  });

  test("does not outlive the condition", () => {
    const steps = [low("09:15"), answer("09:16"), low("09:17", 60)];
    expect(answered("09:18", ...steps)).toEqual([]);
    expect(answered("09:20", ...steps, low("09:19"))).toEqual([["pressure-low", null]]);
  });

  test("to an overdue dose holds until the next one is overdue", () => {
    const steps = ["09:05 x", "09:10 d 900", answer("09:31", "dose-overdue"), "09:30:30 a 490"] as const;
    expect(answered("09:32", ...steps)).toEqual([["dose-overdue", "surgeon knows"]]);
    expect(answered("09:54", ...steps, "09:33 d 300")).toEqual([["dose-overdue", null]]);
  });

  test("to another advisory, or one that was struck out, is none", () => {
    expect(answered("09:20", low("09:15"), answer("09:16", "pressure-high"))).toEqual([
      ["pressure-low", null],
    ]);
    const struck = entry("09:17", { kind: "void", target: "e7", reason: "wrong one" });
    expect(answered("09:20", low("09:15"), answer("09:16"), struck)).toEqual([["pressure-low", null]]);
  });
});

describe("in any run", () => {
  test("advisories never throw, and none is said without an id of the table, a sentence and a moment", () => {
    const ids = ADVISORIES.map(({ id }) => id);
    fc.assert(
      fc.property(anyRun(40), (typing) => {
        play(typing, (file, now) => {
          for (const { id, text, since, age } of advisoriesOf(readRun(file, now.ms))) {
            expect(ids).toContain(id);
            expect(text).toMatch(/\S.*\.$/);
            expect(since).toBeLessThanOrEqual(now.ms + 24 * 3_600_000);
            expect(age).toBeGreaterThanOrEqual(0);
          }
        });
      }),
      { numRuns: 50 },
    );
  });

  test("random readings and gases never make one throw, under either protocol", () => {
    const value = fc.double({ min: -100, max: 1000, noNaN: true });
    const values = (...names: string[]) =>
      fc.record(Object.fromEntries(names.map((name) => [name, value])), { requiredKeys: [] });
    const reading = values(
      ...["flow", "meanPressure", "centralVenousPressure", "arterialTemperature", "venousTemperature"],
      ...["nasopharyngealTemperature", "venousSaturation", "haematocrit"],
    );
    const blood = values(
      ...["carbonDioxide", "oxygen", "saturation", "haemoglobin", "haematocrit", "potassium", "glucose"],
    );
    fc.assert(
      fc.property(reading, blood, fc.boolean(), (measured, sampled, small) => {
        const steps = [twoSquareMetres, ...onBypass, readings("09:10", measured), gas("09:12", sampled)];
        const file = told(steps, small ? paediatricProtocol : adultProtocol);
        expect(advisoriesOf(runAt(file, "09:15")).length).toBeLessThanOrEqual(ADVISORIES.length);
      }),
    );
  });
});
