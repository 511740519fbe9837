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
import type { GasName, ReadingName } from "../../src/record/quantities.ts";
import { anyRun, play } from "../helpers/random-run.ts";
import { runAt } from "../helpers/typed-case.ts";
import { byMosteller, entry, gas, readings, type Step, told, twoSquareMetres } from "./told-case.ts";

type At = { readonly steps: readonly Step[]; readonly clock: string; readonly protocol?: Protocol };

const at = (clock: string, ...steps: Step[]): At => ({ steps, clock });

const saying = (id: string, { steps, clock, protocol }: At): string | undefined =>
  advisoriesOf(runAt(told(steps, protocol), clock)).find((shown) => shown.id === id)?.text;

/** On bypass since 09:00 with heparin and an ACT at its target. */
const onBypass: readonly Step[] = ["08:40 h 28000", "08:50 a 480", "09:00 b"];
const run = (clock: string, ...steps: Step[]): At => at(clock, ...onBypass, ...steps);

const read = (name: ReadingName, value: number): At => run("09:20", readings("09:15", { [name]: value }));
const sample = (name: GasName, value: number): At => run("09:20", gas("09:15", { [name]: value }));
const bloods = (arterial: number, venous: number): At =>
  run("09:20", readings("09:15", { arterialTemperature: arterial, venousTemperature: venous }));

/** Warmed by so much in ten minutes, with the outlet at a temperature. */
const warmed = (by: number, outlet: number): At =>
  run(
    "09:20",
    readings("09:05", { nasopharyngealTemperature: 30 }),
    readings("09:15", { nasopharyngealTemperature: 30 + by, arterialTemperature: outlet }),
  );

/** Hb and venous saturation at a flow of 4.8 L/min through two square metres. */
const oxygen = (haemoglobin: number, venous: number, flow = 4.8): At => ({
  ...run(
    "09:20",
    twoSquareMetres,
    gas("09:15", { haemoglobin, saturation: 99, oxygen: 200 }),
    readings("09:15", { flow, venousSaturation: venous }),
  ),
  protocol: byMosteller,
});

/** Urine of so many millilitres in the first hour on bypass, at 80 kg. */
const urine = (ml: number): At => run("10:05", twoSquareMetres, `10:00 u ${ml}`);

const clockStep = entry("09:10", { kind: "clock", stepMs: 3_600_000 });

type Row = readonly [id: string, why: string, speaks: At, silent: At, text: string];

const TABLE: readonly Row[] = [
  [
    "no-heparin",
    "bypass without heparin",
    at("09:00", "08:50 a 480", "09:00 b"),
    at("09:00", "08:59 h 100", "09:00 b"),
    "On bypass, and no heparin is recorded.",
  ],
  [
    "no-heparin",
    "bypass with no heparin but that in the prime",
    at("09:00", "08:30 h 5000 p", "09:00 b"),
    at("09:00", "08:30 h 5000 p", "08:40 h 28000", "09:00 b"),
    "On bypass, and only heparin in the prime is recorded.",
  ],
  [
    "no-heparin",
    "back on bypass after protamine without heparin",
    run("10:30", "10:00 b", "10:10 p 50", "10:30 b"),
    run("10:30", "10:00 b", "10:10 p 50", "10:29 h 10000", "10:30 b"),
    "On bypass, and no heparin is recorded since protamine was given.",
  ],
  [
    "act-under",
    "bypass with an ACT under its target",
    run("09:10", "09:10 a 479"),
    run("09:10", "09:10 a 480"),
    "On bypass, and the last ACT of 479 s is under 480 s.",
  ],
  [
    "act-under",
    "an ACT under its target, on bypass or not",
    at("09:00", "08:40 h 28000", "08:50 a 479", "09:00 b"),
    at("09:00", "08:40 h 28000", "08:50 a 479"),
    "On bypass, and the last ACT of 479 s is under 480 s.",
  ],
  [
    "act-old",
    "bypass with an ACT that is too old",
    run("09:20:01"),
    run("09:20"),
    "On bypass, and the last ACT is 30:01 old: one is due every 30 min.",
  ],
  [
    "act-old",
    "bypass without any ACT",
    at("09:00", "08:40 h 28000", "09:00 b"),
    at("09:00", "08:40 h 28000", "09:00 b", "09:00 a 100"),
    "On bypass, and no ACT is recorded.",
  ],
  [
    "suckers-after-protamine",
    "suckers on after protamine was started",
    run("10:10", "09:30 m s", "10:00 b", "10:10 p 50"),
    run("10:10", "09:30 m s", "10:00 b", "10:09 m s", "10:10 p 50"),
    "The suckers are on, and protamine has been started.",
  ],
  [
    "suckers-after-protamine",
    "suckers on, with heparin again or not",
    run("10:20", "10:00 b", "10:10 p 50", "10:20 m s"),
    run("10:20", "10:00 b", "10:10 p 50", "10:15 h 20000", "10:20 m s"),
    "The suckers are on, and protamine has been started.",
  ],
  [
    "protamine-on-bypass",
    "protamine on bypass",
    run("10:00", "10:00 p 50"),
    run("10:00", "09:59 b", "10:00 p 50"),
    "Protamine is recorded on bypass.",
  ],
  [
    "protamine-over",
    "protamine over its cap of 2.6 mg for each 100 IU",
    run("10:30", "10:00 b", "10:10 p 700", "10:20 p 29"),
    run("10:30", "10:00 b", "10:10 p 700", "10:20 p 28"),
    "Protamine of 729 mg in all is over 728 mg, 2.6 mg for each 100 IU of heparin.",
  ],
  [
    "dose-overdue",
    "a dose later than its interval",
    run("09:30:01", "09:05 x", "09:10 d 900"),
    run("09:30", "09:05 x", "09:10 d 900"),
    "The next dose of arrest solution is overdue by 0:01 (20 min after the last dose ended).",
  ],
  [
    "dose-overdue",
    "a dose later than the time the surgeon gave",
    run("09:40:01", "09:05 x", "09:10 d 900", "09:10 w 30"),
    run("09:40", "09:05 x", "09:10 d 900", "09:10 w 30"),
    "The next dose of arrest solution is overdue by 0:01 (time given by order).",
  ],
  [
    "clamp-off-bypass",
    "a clamp on while bypass is off",
    run("10:00", "09:05 x", "10:00 b"),
    run("10:00", "09:05 x", "09:59 x", "10:00 b"),
    "The clamp is on while bypass is off.",
  ],
  [
    "clamp-off-bypass",
    "a clamp on while bypass is off and nobody said circulatory arrest",
    run("10:01", "09:05 x", "10:00 b"),
    run("10:01", "09:05 x", "10:00 m a", "10:00 b"),
    "The clamp is on while bypass is off.",
  ],
  [
    "outlet-limit",
    "an arterial outlet at 37.0 °C, which breaks the limit",
    read("arterialTemperature", 37),
    read("arterialTemperature", 36.9),
    "Arterial outlet 37.0 °C is not below 37 °C.",
  ],
  [
    "cooling-gradient",
    "cooling by more than 10 °C",
    bloods(26.4, 36.5),
    bloods(26.4, 36.4),
    "Cooling: the gradient of 10.1 °C is above 10 °C.",
  ],
  [
    "warming-gradient",
    "rewarming by more than 10 °C with a cold outlet",
    bloods(29.9, 19.8),
    bloods(29.9, 19.9),
    "Rewarming: the gradient of 10.1 °C is above 10 °C with the outlet below 30 °C.",
  ],
  [
    "warming-gradient",
    "rewarming by more than 4 °C with a warm outlet",
    bloods(30, 25.9),
    bloods(30, 26),
    "Rewarming: the gradient of 4.1 °C is above 4 °C with the outlet at or above 30 °C.",
  ],
  [
    "warming-gradient",
    "a gradient over 4 °C just where the outlet counts as warm",
    bloods(34.1, 30),
    bloods(29.9, 25.8),
    "Rewarming: the gradient of 4.1 °C is above 4 °C with the outlet at or above 30 °C.",
  ],
  [
    "warming-rate",
    "rewarming faster than 0.5 °C/min with a warm outlet",
    warmed(5.1, 36),
    warmed(5, 36),
    "Rewarming by 0.51 °C/min is faster than 0.5 °C/min (nasopharyngeal temperature).",
  ],
  [
    "warming-rate",
    "fast rewarming, the outlet warm or not",
    warmed(8, 30),
    warmed(8, 29.9),
    "Rewarming by 0.8 °C/min is faster than 0.5 °C/min (nasopharyngeal temperature).",
  ],
  [
    "pressure-low",
    "MAP below 50 mmHg",
    read("meanPressure", 49),
    read("meanPressure", 50),
    "MAP 49 mmHg is below 50 mmHg.",
  ],
  [
    "pressure-high",
    "MAP above 80 mmHg",
    read("meanPressure", 81),
    read("meanPressure", 80),
    "MAP 81 mmHg is above 80 mmHg.",
  ],
  [
    "delivery-low",
    "DO2i below 280",
    oxygen(8.3, 80),
    oxygen(8.4, 80),
    "DO2i 279 mL/min/m² is below 280 mL/min/m².",
  ],
  ["extraction-high", "O2ER above 30 %", oxygen(10, 72), oxygen(10, 73), "O2ER 30.4 % is above 30 %."],
  [
    "haematocrit-low",
    "a haematocrit below its floor",
    sample("haematocrit", 20.9),
    sample("haematocrit", 21),
    "Haematocrit 20.9 % is below 21 %.",
  ],
  [
    "haematocrit-low",
    "a haematocrit in line below its floor",
    read("haematocrit", 20.9),
    read("haematocrit", 21),
    "Haematocrit 20.9 % is below 21 %.",
  ],
  [
    "glucose-low",
    "glucose below its range",
    sample("glucose", 3.9),
    sample("glucose", 4),
    "Glucose 3.9 mmol/L is below 4 mmol/L.",
  ],
  [
    "glucose-high",
    "glucose above its range",
    sample("glucose", 10.1),
    sample("glucose", 10),
    "Glucose 10.1 mmol/L is above 10 mmol/L.",
  ],
  [
    "potassium-low",
    "potassium below its range",
    sample("potassium", 3.4),
    sample("potassium", 3.5),
    "Potassium 3.4 mmol/L is below 3.5 mmol/L.",
  ],
  [
    "potassium-high",
    "potassium above its range",
    sample("potassium", 6.1),
    sample("potassium", 6),
    "Potassium 6.1 mmol/L is above 6 mmol/L.",
  ],
  [
    "carbon-dioxide-low",
    "PaCO2 below its range",
    sample("carbonDioxide", 34),
    sample("carbonDioxide", 35),
    "PaCO2 34 mmHg is below 35 mmHg.",
  ],
  [
    "carbon-dioxide-high",
    "PaCO2 above its range",
    sample("carbonDioxide", 46),
    sample("carbonDioxide", 45),
    "PaCO2 46 mmHg is above 45 mmHg.",
  ],
  [
    "urine-low",
    "less than 0.5 mL/kg/h of urine",
    urine(39),
    urine(40),
    "Urine on bypass of 0.49 mL/kg/h is below 0.5 mL/kg/h.",
  ],
  [
    "left-in-pump",
    "bypass off with volume left and nothing returned",
    run("10:10", "10:00 b", "10:05 l 1"),
    run("10:10", "10:00 b", "10:05 l 0"),
    "Bypass is off with 1 mL left in the pump, and nothing has been returned since.",
  ],
  [
    "left-in-pump",
    "volume left, something of it returned or not",
    run("10:10", "10:00 b", "10:05 l 800"),
    run("10:10", "10:00 b", "10:05 l 800", "10:06 r 100"),
    "Bypass is off with 800 mL left in the pump, and nothing has been returned since.",
  ],
  [
    "left-in-pump",
    "volume left while bypass is off for good or for circulatory arrest",
    run("10:10", "09:30 l 800", "10:00 b"),
    run("10:10", "09:30 l 800", "10:00 b", "10:00 m a"),
    "Bypass is off with 800 mL left in the pump, and nothing has been returned since.",
  ],
  [
    "reminder-overdue",
    "a reminder that is overdue",
    run("09:20:01", "09:10 w 10 blood gas"),
    run("09:20", "09:10 w 10 blood gas"),
    "A reminder is overdue by 0:01: blood gas.",
  ],
  [
    "reminder-overdue",
    "two reminders that are overdue, one of them done or not",
    run("09:40", "09:10 w 10 blood gas", "09:11 w 15 call the ward"),
    run("09:40", "09:10 w 10 blood gas", "09:11 w 15 call the ward", "09:39 w ok", "09:39 w ok"),
    "2 reminders are overdue, the first by 20:00: blood gas.",
  ],
  [
    "out-of-order",
    "an entry dated back before one of its own subject",
    run("09:30", "09:20 x", "09:21 x off @9:19"),
    run("09:30", "09:20 x", "09:21 x off @9:20:01"),
    "#6 clamp off at 09:19:00 lies before #5 clamp on at 09:20:00, which was written first.",
  ],
  [
    "out-of-order",
    "a late entry of its own subject or of another",
    run("09:30", "09:20 a 490", "09:21 a 500 @9:19"),
    run("09:30", "09:20 a 490", "09:21 v 500 c @9:19"),
    "#6 ACT 500 s at 09:19:00 lies before #5 ACT 490 s at 09:20:00, which was written first.",
  ],
  [
    "clock-stepped",
    "the system clock stepped",
    run("09:30", clockStep),
    run("09:30"),
    "The system clock stepped by +3600 s at 09:10:00; the record's time did not.",
  ],
];

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
