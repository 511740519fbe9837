// The invented scripts: every step is taken, in order, and together they show what a run can hold.

import { describe, expect, test } from "vitest";
import { INVENTED } from "../../src/commands/invented/index.ts";
import { afterStep, momentOf, openedCase, played } from "../../src/commands/invented/play.ts";
import { isStroke } from "../../src/commands/invented/script.ts";
import { keysOf } from "../../src/console/key.ts";
import { type Model, openModel } from "../../src/console/model.ts";
import { strokesOf } from "../../src/console/strokes/table.ts";
import { update } from "../../src/console/update.ts";
import { type Instant, toIso } from "../../src/format/instant.ts";
import type { Entry } from "../../src/record/entry.ts";
import { checkCase } from "../../src/record/reading-a-file.ts";
import { caseOf } from "./samples.ts";

const FEWEST: Record<string, number> = { "adult-valve": 60, "adult-coronary": 40, "infant-repair": 40 };

describe.each(INVENTED)("$label", (script) => {
  test("has every step taken, one entry a step", () => {
    let file = openedCase(script);
    for (const step of script.steps) {
      const after = afterStep(file, step, momentOf(script, step));
      expect(after, `${step.at} ${isStroke(step) ? step.type : step.form.kind}`).toMatchObject({ ok: true });
      if (after.ok) file = after.value;
    }
    expect(file.entries).toHaveLength(script.steps.length + 1);
    expect(played(script)).toEqual({ ok: true, value: file });
  });

  test("is long enough to be a case, and a valid one", () => {
    const file = caseOf(script);
    expect(file.entries.length).toBeGreaterThanOrEqual(FEWEST[script.id] ?? Number.POSITIVE_INFINITY);
    expect(checkCase(JSON.parse(JSON.stringify(file)))).toEqual({ ok: true, value: file });
  });

  test("goes forward in time, and stamps each entry with the time of its step", () => {
    const times = script.steps.map(({ at }) => at);
    expect(times).toEqual(times.toSorted());
    expect(new Set(times).size).toBe(times.length);
    expect(times.every((at) => /^([01]\d|2[0-3]):[0-5]\d:[0-5]\d$/.test(at))).toBe(true);
    const written = caseOf(script)
      .entries.slice(1)
      .map(({ loggedAt }) => loggedAt);
    expect(written).toEqual(script.steps.map((step) => toIso(momentOf(script, step))));
  });

  test("keeps what was typed to the letter, and every stroke begins with its key", () => {
    const typed = script.steps.map((step) => (isStroke(step) ? step.type : ""));
    expect(
      caseOf(script)
        .entries.slice(1)
        .map((entry) => entry.typed),
    ).toEqual(typed);
    const keys = strokesOf(script.protocol).map(({ key }) => key);
    for (const text of typed.filter((one) => one !== "")) expect(keys).toContain(text[0]);
  });
});

/** The model after the keys of a stroke and Enter. */
const pressed = (model: Model, stroke: string, now: Instant): Model =>
  keysOf(`${stroke}\r`).reduce((after, key) => update(after, key, now).model, model);

/** What a correction typed at the console says more of is the number of the entry it picked. */
const withoutTyped = (entries: readonly Entry[]) => entries.map(({ typed, ...entry }) => entry);

test.each(INVENTED)("$label, pressed key by key on the console, gives the same record", (script) => {
  let model = openModel(openedCase(script));
  for (const step of script.steps) {
    const now = momentOf(script, step);
    const formed = isStroke(step) ? null : afterStep(model.file, step, now);
    if (isStroke(step)) model = pressed(model, step.type, now);
    else if (formed?.ok) model = { ...model, file: formed.value };
  }
  expect(withoutTyped(model.file.entries)).toEqual(withoutTyped(caseOf(script).entries));
});

test("the scripts together hold late entries, amounts and times put right, strikes and a handed-over pump", () => {
  const entries = INVENTED.flatMap((script) => caseOf(script).entries);
  const changed = entries.flatMap((entry) => (entry.kind === "amend" ? Object.keys(entry.changes) : []));
  expect(changed).toEqual(expect.arrayContaining(["ml", "at"]));
  expect(entries.some(({ at, loggedAt }) => at < loggedAt)).toBe(true);
  expect(entries.some(({ kind }) => kind === "void")).toBe(true);
  expect(entries.some(({ kind }) => kind === "operator")).toBe(true);
});

test("a step that the console would not take is named, with its time and the reason", () => {
  const [script] = INVENTED;
  const steps = [{ at: "07:30:00", type: "a nonsense" }];
  expect(script && played({ ...script, steps })).toEqual({
    ok: false,
    fault: expect.stringMatching(/^At 07:30:00, a nonsense: /),
  });
});
