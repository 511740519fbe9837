// What `figures` says of a case is what the console shows of it.

import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import { PATIENCE, readOff, saved, seconds } from "../terminal/driving.ts";
import { startConsole, stopConsoles } from "../terminal/harness.ts";
import { caseFolder, expectDone } from "./pumpside.ts";

let cases: Awaited<ReturnType<typeof caseFolder>>;
beforeAll(async () => {
  cases = await caseFolder();
});
afterEach(stopConsoles);
afterAll(() => cases.remove());

const LINES = [
  ...[
    "v1300f @-100",
    "h32000 @-95",
    "a505 @-94",
    "b @-90",
    "x @-80",
    "d450 a @-79",
    "d350 l @-60",
    "v500c @-50",
  ],
  ...["u=300 @-30", "x @-25", "a487 @-20", "b @-10", "l900 @-9", "r100 @-8", "o250c @-7", "p330 @-6"],
];

test("after bypass the screen and the data agree on every clock and every balance", async () => {
  const path = expectDone(await cases.pumpside("new", "--by", "KM")).trim();
  const console = startConsole({ dir: cases.dir, args: ["run", path], cols: 120, rows: 30 });
  await console.waitFor(saved(1), PATIENCE);
  console.raw(LINES.map((line) => `${line}\r`).join(""));
  await console.waitFor(saved(LINES.length + 1), PATIENCE);
  const screen = await console.settled();
  const out = expectDone(await cases.pumpside("figures", path, "--json"));
  const { figures, phase } = JSON.parse(out) as { phase: string; figures: Record<string, { value: number }> };
  const told = (name: string) => figures[name]?.value ?? Number.NaN;
  const shown = readOff(screen);
  const onScreen = (label: string) =>
    Number(new RegExp(` ${label} ([+-]?\\d+)`).exec(screen.join("\n"))?.[1]);

  expect(shown.phase.toLowerCase()).toBe(phase);
  expect([seconds(shown.bypass), seconds(shown.clamp)]).toEqual([told("bypassTime"), told("arrestTime")]);
  expect(shown.act).toBe(`${told("lastAct")} s`);
  expect(
    Object.fromEntries(
      ["in", "out", "net", "returned", "left", "to patient", "urine", "arrest"].map((label) => [
        label,
        onScreen(label),
      ]),
    ),
  ).toEqual({
    in: told("fluidIn"),
    out: told("out"),
    net: told("net"),
    returned: told("returned"),
    left: told("leftInPump"),
    "to patient": told("netToPatient"),
    urine: told("urine"),
    arrest: told("arrestGiven"),
  });
  // By hand: in 1300 + 500 + 800/5, out 300 + 250, left 900 − 100 − 250.
  expect([told("fluidIn"), told("net"), told("leftInPump"), told("netToPatient")]).toEqual([
    1960, 1410, 550, 860,
  ]);
});
