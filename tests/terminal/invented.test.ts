// The invented cases typed stroke by stroke in a real terminal at 80 by 24: the file holds what the scripts say, in
// their order, and ends with the balances of the hand-made tables. The clock is the real one, so times are left out.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { INVENTED } from "../../src/commands/invented/index.ts";
import { momentOf } from "../../src/commands/invented/play.ts";
import type { Script } from "../../src/commands/invented/script.ts";
import type { Key } from "../../src/console/key.ts";
import { keysFor } from "../../src/console/keys-for.ts";
import { logged } from "../../src/console/read-stroke.ts";
import { readRun } from "../../src/figures/run.ts";
import { msOf } from "../../src/format/instant.ts";
import type { Entry } from "../../src/record/entry.ts";
import { openedCase } from "../../src/record/opening.ts";
import { openClock } from "../../src/store/clock.ts";
import { createCase } from "../../src/store/open-case.ts";
import { expectedTables } from "../samples/expected-tables.ts";
import { caseOf, sampleFolder } from "../samples/samples.ts";
import { toldFigures } from "../samples/told-figures.ts";
import { caseAt, caseFolder, PATIENCE, saved } from "./driving.ts";
import { keys, startConsole, stopConsoles } from "./harness.ts";

let folder: Awaited<ReturnType<typeof caseFolder>>;
beforeEach(async () => {
  folder = await caseFolder();
});
afterEach(async () => {
  await stopConsoles();
  await folder.remove();
});

/** A key as a terminal sends it. */
const bytesOf = (key: Key): string => {
  if (key.name === "char") return key.char;
  if (key.name === "enter" || key.name === "down" || key.name === "escape") return keys[key.name];
  throw new Error(`no script presses ${key.name}`);
};

/** Every time that is given becomes now: a run typed in a minute has no twenty minutes ago. */
const withoutTimes = (line: string): string => line.replaceAll(/@-[\d:]+/g, "@-0");

/** What does not depend on when it was typed. */
function timeless(entry: Entry): object {
  const { at, loggedAt, typed, prev, ...rest } = entry;
  switch (rest.kind) {
    case "reminder":
      return { ...rest, dueAt: "" };
    case "amend":
      return {
        ...rest,
        changes: Object.keys(rest.changes).join() === "ml" ? rest.changes : Object.keys(rest.changes),
      };
    case "operator":
      return { ...rest, summary: rest.summary?.length ?? 0 };
    case "closed":
      // Whether an ACT was due before the next depends on how long bypass lasted.
      return { ...rest, figures: null, completeness: rest.completeness?.map(({ item }) => item) };
    default:
      return rest;
  }
}

/** The rows of a hand-made table that hold whenever the run was typed. */
const HELD = [
  ...[
    "arrest solution given",
    "crystalloid of it",
    "fluid in",
    "urine",
    "ultrafiltrate",
    "other out",
    "out",
    "net",
  ],
  ...[
    "returned",
    "left in the pump",
    "net to the patient",
    "first heparin",
    "all heparin",
    "protamine given",
  ],
  ...[
    "heparin for each kilogram",
    "protamine on the first heparin",
    "protamine on all heparin",
    "lowest haematocrit",
  ],
  ...["glucose from 4 to 10 mmol/L", "arterial outlet at most 37 °C", "every ACT on bypass at its target"],
  ...["PaCO2 from 35 to 45 mmHg", "highest lactate"],
];

const held = (rows: readonly (readonly [string, string])[]) => rows.filter(([name]) => HELD.includes(name));

async function typedInTerminal(script: Script): Promise<string> {
  const { protocol, operator, place, label } = script;
  const now = openClock().now();
  const made = await createCase({ folder: folder.dir, label, protocol, operator, place, now });
  if (!made.ok) throw new Error(made.fault);
  const console = startConsole({ dir: folder.dir, args: ["run", made.value.path] });
  await console.waitFor(saved(1), PATIENCE);
  let file = openedCase(script, script.start);
  for (const step of script.steps) {
    const moment = momentOf(script, step);
    const pressed = keysFor(file, withoutTimes(step.type), moment).map(bytesOf);
    const after = logged(file, step.type, moment);
    if (!after.ok) throw new Error(`${step.type}: ${after.fault}`);
    file = after.value;
    console.raw(pressed.join(""));
    await console.waitFor(saved(file.entries.length), PATIENCE).catch((error) => {
      throw new Error(`${step.at} ${step.type}: ${error}`);
    });
  }
  return made.value.path;
}

test.each(INVENTED)("$label", async (script) => {
  const file = await caseAt(await typedInTerminal(script));
  expect(file.entries.length).toBeGreaterThanOrEqual(120);
  expect(file.entries.map(timeless)).toEqual(caseOf(script).entries.map(timeless));

  const end = expectedTables(readFileSync(join(sampleFolder, `${script.id}.expected.md`), "utf8")).at(-1);
  const run = readRun(file, msOf(file.entries.at(-1)?.loggedAt ?? ""));
  expect(held(toldFigures(run, 0))).toEqual(held(end?.figures ?? []));
});
