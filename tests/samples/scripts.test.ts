// The invented scripts: every step is taken, in order, and together they show what a run can hold.

import { describe, expect, test } from "vitest";
import { INVENTED } from "../../src/commands/invented/index.ts";
import { momentOf, played } from "../../src/commands/invented/play.ts";
import type { Step } from "../../src/commands/invented/script.ts";
import { keysFor } from "../../src/console/keys-for.ts";
import { type Model, openModel } from "../../src/console/model.ts";
import { logged } from "../../src/console/read-stroke.ts";
import { strokesOf } from "../../src/console/strokes/table.ts";
import { update } from "../../src/console/update.ts";
import { readRun } from "../../src/figures/run.ts";
import { intervalsOf } from "../../src/figures/spans.ts";
import { type Instant, toIso } from "../../src/format/instant.ts";
import type { Entry } from "../../src/record/entry.ts";
import { openedCase } from "../../src/record/opening.ts";
import { checkCase } from "../../src/record/reading-a-file.ts";
import { ofKind } from "../../src/record/standing.ts";
import { caseOf } from "./samples.ts";

const FEWEST = 120;

describe.each(INVENTED)("$label", (script) => {
  test("has every step taken, each of them writing something", () => {
    let file = openedCase(script, script.start);
    for (const step of script.steps) {
      const after = logged(file, step.type, momentOf(script, step));
      expect(after, `${step.at} ${step.type}`).toMatchObject({ ok: true });
      if (!after.ok) return;
      expect(after.value.entries.length, `${step.at} ${step.type}`).toBeGreaterThan(file.entries.length);
      file = after.value;
    }
    expect(played(script)).toEqual({ ok: true, value: file });
  });

  test("is long enough to be a case, and a valid one", () => {
    const file = caseOf(script);
    expect(file.entries.length).toBeGreaterThanOrEqual(FEWEST);
    expect(checkCase(JSON.parse(JSON.stringify(file)))).toEqual({ ok: true, value: file });
  });

  test("goes forward in time, and stamps each entry with the time of its step", () => {
    const times = script.steps.map(({ at }) => at);
    expect(times).toEqual(times.toSorted());
    expect(new Set(times).size).toBe(times.length);
    expect(times.every((at) => /^([01]\d|2[0-3]):[0-5]\d:[0-5]\d$/.test(at))).toBe(true);
    const written = caseOf(script).entries.slice(1);
    expect([...new Set(written.map(({ loggedAt }) => loggedAt))]).toEqual(
      script.steps.map((step) => toIso(momentOf(script, step))),
    );
  });

  test("keeps what was typed to the letter, and every stroke begins with its key", () => {
    const written = caseOf(script).entries.slice(1);
    expect([...new Map(written.map(({ loggedAt, typed }) => [loggedAt, typed])).values()]).toEqual(
      script.steps.map(({ type }) => type),
    );
    const keys = strokesOf(script.protocol).map(({ key }) => key);
    for (const { typed } of written) expect(keys).toContain(typed[0]);
  });

  test("has readings, gases and ACTs on bypass about as often as the protocol asks", () => {
    const run = readRun(caseOf(script), momentOf(script, script.steps.at(-1) as Step).ms);
    for (const [kind, most] of [
      ["readings", 17],
      ["gas", 45],
      ["act", 45],
    ] as const) {
      const moments = ofKind(run.course.record.facts, kind).map(({ at }) => at);
      for (const { from, to } of intervalsOf(run.course.spans, "bypass")) {
        const inside = moments.filter((at) => at > from && at < (to ?? run.now));
        const marks = [from, ...inside, to ?? run.now];
        const gaps = marks.slice(1).map((mark, i) => (mark - (marks[i] as number)) / 60_000);
        expect(Math.max(...gaps), kind).toBeLessThanOrEqual(most);
      }
    }
  });
});

/** The model after the keys of a stroke. */
const pressed = (model: Model, stroke: string, now: Instant): Model =>
  keysFor(model.file, stroke, now).reduce((after, key) => update(after, key, now).model, model);

/** The console keeps a correction with the number it picked, a form with its fields in order, a tick as its key. */
const withoutTyped = (entries: readonly Entry[]) => entries.map(({ typed, ...entry }) => entry);

test.each(INVENTED)("$label, pressed key by key on the console, gives the same record", (script) => {
  let model = openModel(openedCase(script, script.start));
  for (const step of script.steps) {
    model = pressed(model, step.type, momentOf(script, step));
  }
  expect(withoutTyped(model.file.entries)).toEqual(withoutTyped(caseOf(script).entries));
});

test("the scripts together hold whatever a run can hold", () => {
  const entries = INVENTED.flatMap((script) => caseOf(script).entries);
  const changed = entries.flatMap((entry) => (entry.kind === "amend" ? Object.keys(entry.changes) : []));
  expect(changed).toEqual(expect.arrayContaining(["ml", "at", "dueAt"]));
  expect(entries.some(({ at, loggedAt }) => at < loggedAt)).toBe(true);
  const kinds = ["void", "operator", "acknowledged", "incident", "reminder", "reminder-done", "check"];
  expect(entries.map(({ kind }) => kind)).toEqual(expect.arrayContaining(kinds));
  expect(entries.some((entry) => entry.kind === "drug" && entry.checkedBy)).toBe(true);
  expect(entries.some((entry) => entry.kind === "volume" && entry.unitNumber && entry.checkedBy)).toBe(true);
  expect(entries.some((entry) => entry.kind === "check" && entry.state === "not-applicable")).toBe(true);
});

test("a step that the console would not take is named, with its time and the reason", () => {
  const [script] = INVENTED;
  const steps = [{ at: "07:30:00", type: "a nonsense" }];
  expect(script && played({ ...script, steps })).toEqual({
    ok: false,
    fault: expect.stringMatching(/^At 07:30:00, a nonsense: /),
  });
});
