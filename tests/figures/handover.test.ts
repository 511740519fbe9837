/** The handover of the pump, composed from the record. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { INVENTED } from "../../src/commands/invented/index.ts";
import { folded } from "../../src/figures/folded.ts";
import { handoverSummary } from "../../src/figures/handover.ts";
import { readRun } from "../../src/figures/run.ts";
import { msOf } from "../../src/format/instant.ts";
import { asOf } from "../../src/record/as-of.ts";
import { operator } from "../../src/record/entries-case.ts";
import { anyRun, play } from "../helpers/random-run.ts";
import { runAt } from "../helpers/typed-case.ts";
import { caseOf } from "../samples/samples.ts";
import { entry, gas, readings, type Step, told } from "./told-case.ts";

const summary = (clock: string, ...steps: Step[]) => handoverSummary(runAt(told(steps), clock)).join("\n");

/** The summary on one line each, as if nothing had been folded. */
const unfolded = (clock: string, ...steps: Step[]) => summary(clock, ...steps).replace(/\n\s+/g, " ");

const run: readonly Step[] = [
  entry("07:10", { kind: "patient", number: "17", weight: 80, height: 180, sex: "male", allergies: "latex" }),
  entry("07:12", { kind: "plan", operation: "mitral valve repair", targetTemperature: 34 }),
  "08:40 h 32000",
  "08:50 a 520",
  "09:00 b",
  "09:00 f full",
  "09:02 t 34",
  "09:05 x",
  "09:10 d 900",
  "09:12 l 800",
  readings("09:15", {
    flow: 4.7,
    meanPressure: 58,
    arterialTemperature: 33.8,
    nasopharyngealTemperature: 34.4,
  }),
  gas("09:16", { ph: 7.39, haemoglobin: 8.9, haematocrit: 27, potassium: 4.6, lactate: 1.2 }),
  "09:18 v 500 c",
  "09:20 u 120",
];

describe("the summary", () => {
  test("is read out as situation, background, assessment and recommendation", () => {
    const letters = summary("09:25", ...run)
      .split("\n")
      .map((line) => line.slice(0, 3).trim())
      .filter((letter) => letter !== "");
    expect(letters).toEqual(["S", "B", "A", "R"]);
  });

  test.each([
    "arrested · bypass 25:00 · clamp 20:00",
    "flow 4.70 L/min (10 min ago) · flow ordered full",
    "MAP 58 mmHg (10 min ago)",
    "in the pump 800 mL (level read 13 min ago)",
    "male, 80 kg, 180 cm, number 17",
    "allergies: latex · operation: mitral valve repair",
    "arterial gas 9 min ago: pH 7.39, Hb 8.9, Hct 27.0, K 4.6, lac 1.2",
    "ACT 520 s 35 min ago, target 480 s · heparin 32 000 IU",
    "arrest solution 900 mL in 1 dose, the last ended 15 min ago",
    "fluid in 680 mL, out 120 mL, net +560 mL · urine 120 mL",
    "advice: On bypass, and the last ACT is 35:00 old: one is due every 30 min.",
    "next: ACT overdue 5:00 · next dose due in 5:00 · readings due in 5:00",
    "limits: MAP 50–80 mmHg · DO2i 280 · Hct 21 % · ACT 480 s",
  ])("says: %s", (said) => {
    expect(unfolded("09:25", ...run)).toContain(said);
  });

  test("marks what is old, and says what nobody wrote down", () => {
    expect(unfolded("09:40", ...run)).toContain("MAP 58 mmHg (old: 25 min ago)");
    const empty = unfolded("09:00");
    expect(empty).toContain("patient: not recorded");
    expect(empty).toContain("allergies: not recorded");
    expect(empty).toContain("ACT not recorded");
    expect(empty).toContain("next: nothing is due");
  });

  test("brings incidents, notes, and spans that are on", () => {
    const more = ["09:21 e air seen in the line", "09:22 n surgeon asks for 60", "09:23 m v"];
    const said = unfolded("09:25", ...run, ...more);
    expect(said).toContain("incident 09:21: air seen in the line");
    expect(said).toContain("note 09:22: surgeon asks for 60");
    expect(said).toContain("also on: vent");
  });

  test("leaves out advice that was answered", () => {
    const answer = entry("09:25", { kind: "acknowledged", advisory: "act-old", reason: "sample is out" });
    expect(unfolded("09:25", ...run, answer)).not.toContain("advice:");
  });

  test("of the sample cases fits 76 columns at every entry, and the entry that keeps it", () => {
    for (const script of INVENTED) {
      const file = caseOf(script);
      for (const { loggedAt } of file.entries) {
        const lines = handoverSummary(readRun(asOf(file, msOf(loggedAt)), msOf(loggedAt)));
        expect(operator.shape.summary.safeParse([...lines]).success).toBe(true);
        for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(76);
      }
    }
  });

  test("never throws, and is never without its four parts", () => {
    fc.assert(
      fc.property(anyRun(30), (typing) => {
        play(typing, (file, now) => {
          const lines = handoverSummary(readRun(file, now.ms));
          for (const letter of ["S", "B", "A", "R"])
            expect(lines.filter((line) => line.startsWith(`${letter} `))).toHaveLength(1);
        });
      }),
      { numRuns: 30 },
    );
  });
});

describe("folding", () => {
  const word = fc.stringMatching(/^[a-z0-9,·+]{1,12}$/);

  test("loses no word and keeps within the width", () => {
    fc.assert(
      fc.property(fc.array(word, { minLength: 1, maxLength: 60 }), (words) => {
        const lines = folded("label", words.join(" "), 10);
        expect(lines.join(" ").replace("label", "").split(/\s+/).filter(Boolean)).toEqual(words);
        for (const line of lines) expect(line.length).toBeLessThanOrEqual(76);
      }),
    );
  });

  test("keeps a number beside its unit where the phrases allow it", () => {
    const text = `${"x".repeat(60)} · full 4.76 L/min`;
    expect(folded("S", text, 3)).toEqual([`S  ${"x".repeat(60)} ·`, "   full 4.76 L/min"]);
  });
});
