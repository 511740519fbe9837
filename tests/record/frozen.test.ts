/** A case written at file version 1 keeps loading to the same facts and figures, whatever version reads it. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readRun } from "../../src/figures/run.ts";
import { readCase } from "../../src/record/reading-a-file.ts";
import { standing } from "../../src/record/standing.ts";
import { KINDS } from "../helpers/every-kind.ts";
import { at, minutes } from "../helpers/typed-case.ts";

const frozen = new URL("frozen/case-v1.json", import.meta.url);

function frozenCase() {
  const read = readCase(readFileSync(frozen, "utf8"));
  if (!read.ok) throw new Error(read.fault);
  return read.value;
}

test("it holds every kind of entry", () => {
  const kinds = new Set<string>(frozenCase().entries.map(({ kind }) => kind));
  expect(KINDS.filter((kind) => !kinds.has(kind))).toEqual([]);
});

test("nothing of it is lost or changed by reading", () => {
  expect(frozenCase()).toEqual(JSON.parse(readFileSync(frozen, "utf8")));
});

test("its corrections stand", () => {
  const { facts, written } = standing(frozenCase().entries);
  expect(written.filter(({ struck }) => struck).map(({ logged }) => logged.id)).toEqual(["e27"]);
  expect(facts.find(({ logged }) => logged.id === "e18")?.entry).toMatchObject({ ml: 1000 });
});

test("it says what it said when it was written", () => {
  const file = frozenCase();
  const { course, timers, act, coagulation, pump, netToPatient } = readRun(file, at("12:00").ms);
  expect({
    phase: course.phase,
    operator: course.operator,
    closedAt: course.closedAt,
    bypass: timers.bypass.total,
    arrest: timers.arrest.total,
    reperfusion: timers.reperfusion.total,
    openReminders: course.reminders.length,
    act: [act?.seconds, act?.met],
  }).toEqual({
    phase: "after",
    operator: "EF",
    closedAt: at("10:50").ms,
    bypass: minutes(80),
    arrest: minutes(50),
    reperfusion: minutes(20),
    openReminders: 0,
    act: [480, true],
  });
  const { arrestGiven, arrestCrystalloid, fluidIn, urine, net, returned } = course.balances;
  const figures = {
    arrestGiven,
    arrestCrystalloid,
    fluidIn,
    urine,
    net,
    returned,
    left: pump.left,
    netToPatient,
  };
  expect(Object.fromEntries(Object.entries(figures).map(([name, { value }]) => [name, value]))).toEqual({
    arrestGiven: 1000,
    arrestCrystalloid: 200,
    fluidIn: 700,
    urine: 450,
    net: 250,
    returned: 200,
    left: 700,
    netToPatient: -450,
  });
  expect([coagulation.heparinTotal.value, coagulation.heparinFirst.value]).toEqual([37_000, 32_000]);
  expect([coagulation.protamineGiven.value, coagulation.protamineSuggested.value]).toEqual([320, 320]);
});
