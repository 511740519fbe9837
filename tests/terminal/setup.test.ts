/** The patient and the plan typed in a real terminal at 80×24: an adult, a newborn, a very heavy adult. */
import { mkdtempSync, readdirSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, expect, test } from "vitest";
import type { CaseFile } from "../../src/record/case.ts";
import { keys, type RunningConsole, startConsole, stopConsoles } from "./harness.ts";

afterEach(stopConsoles);

type Setup = {
  readonly who: string;
  readonly tabs: number;
  /** Field by field in the form's order. */
  readonly typed: readonly string[];
  readonly patient: object;
  /** Figures that stand on one of the pages, worked out from the formulas by hand. */
  readonly shown: readonly RegExp[];
};

const SETUPS: readonly Setup[] = [
  {
    who: "an adult of 82 kg",
    tabs: 0,
    typed: ["A-1", "m", "71", "82", "180", "41"],
    patient: { number: "A-1", sex: "male", ageYears: 71, weight: 82, height: 180, haematocrit: 41 },
    // 0.007184 × 82^0.425 × 180^0.725 = 2.016; × 2.4 = 4.84; Nadler 0.3669·1.8³ + 0.03219·82 + 0.6041 = 5.383 L.
    shown: [/body surface \(DuBois\) +2\.02 m²/, /full flow +4\.84 L\/min/, /blood volume +5383 mL/],
  },
  {
    who: "a newborn of 3.4 kg",
    tabs: 1,
    typed: ["N-1", "f", "0.02", "3.4", "50", "42"],
    patient: { number: "N-1", sex: "female", ageYears: 0.02, weight: 3.4, height: 50, haematocrit: 42 },
    // 0.024265 × 3.4^0.5378 × 50^0.3964 = 0.221; 150 mL/kg/min × 3.4 kg = 0.51 L/min; 85 mL/kg × 3.4 kg = 289 mL.
    shown: [/body surface \(Haycock\) +0\.221 m²/, /full flow +0\.51 L\/min/, /blood volume +289 mL/],
  },
  {
    who: "an adult of 160 kg",
    tabs: 0,
    typed: ["A-2", "f", "55", "160", "165", "39"],
    patient: { number: "A-2", sex: "female", ageYears: 55, weight: 160, height: 165, haematocrit: 39 },
    // 0.007184 × 160^0.425 × 165^0.725 = 2.516; × 2.4 = 6.04; Nadler 0.3561·1.65³ + 0.03308·160 + 0.1833 = 7.076 L.
    shown: [/body surface \(DuBois\) +2\.52 m²/, /full flow +6\.04 L\/min/, /blood volume +7076 mL/],
  },
];

/** The screen with every page of figures after it, as one text; nothing on any page may be wider than the screen. */
async function allPages(console: RunningConsole): Promise<string> {
  await console.waitFor("figures 1 of");
  const first = await console.settled();
  const count = Number(/figures 1 of (\d+)/.exec(first.join("\n"))?.[1]);
  const pages = [first];
  for (let page = 2; page <= count; page++) {
    await console.type(keys.pageDown);
    await console.waitFor(`figures ${page} of ${count}`);
    pages.push(await console.settled());
  }
  return pages.flat().join("\n");
}

test.each(SETUPS)("$who", async ({ tabs, typed, patient, shown }) => {
  const dir = mkdtempSync(join(tmpdir(), "pumpside-setup-"));
  const console = startConsole({ dir });
  await console.waitFor("new case");
  await console.type(`n${keys.tab.repeat(tabs)}KM${keys.enter}`);
  await console.waitFor("saved 1");
  await console.type(`k${typed.join(keys.enter)}${keys.enter}`);
  await console.waitFor("▸Hb");
  const text = await allPages(console);
  for (const figure of shown) expect(text).toMatch(figure);
  expect(text).not.toMatch(/NaN|Infinity|undefined|null/);

  await console.type(`;${keys.enter}`);
  await console.waitFor("saved 2");
  const name = readdirSync(dir).find((one) => /^case-.*\.json$/.test(one)) as string;
  const { entries } = JSON.parse(readFileSync(join(dir, name), "utf8")) as CaseFile;
  expect(entries[1]).toMatchObject({ kind: "patient", ...patient });
  const [number, sex, age, weight, height, hct] = typed;
  expect(entries[1]?.typed).toBe(
    `k number=${number} sex=${sex} age=${age} weight=${weight} height=${height} Hct=${hct}`,
  );
});
