// The trainer: orders in their time, the pace of life while one waits for its answer, and a script that works.

import { describe, expect, test } from "vitest";
import { played } from "../../src/commands/invented/play.ts";
import { trainingRun } from "../../src/commands/invented/training-run.ts";
import { OVER, type Trainer, trainerOf, WAITING } from "../../src/commands/trainer.ts";
import { logged } from "../../src/console/read-stroke.ts";
import type { CaseFile } from "../../src/record/case.ts";

const [first, second] = trainingRun.steps;

function begun(speed: number) {
  let passed = 0;
  const trainer = trainerOf(trainingRun, speed, () => passed);
  if (!trainer.ok) throw new Error(trainer.fault);
  let file: CaseFile = trainer.value.opened;
  return {
    trainer: trainer.value,
    wait(seconds: number): string {
      passed += seconds * 1000;
      return trainer.value.look();
    },
    type(line: string): string {
      const longer = logged(file, line, trainer.value.now());
      if (!longer.ok) throw new Error(longer.fault);
      file = longer.value;
      trainer.value.keep(file);
      return trainer.value.look();
    },
  };
}

/** Waits in steps of a second until an order is said. */
function nextOrder(run: ReturnType<typeof begun>, trainer: Trainer = run.trainer): string {
  for (let second = 0; second < 600; second++) {
    const words = run.wait(1);
    if (words !== WAITING) return words;
  }
  throw new Error(`no order came in ten minutes, ${trainer.all} in all`);
}

describe("the script", () => {
  test("is taken by the console stroke by stroke, one entry each", () => {
    const file = played(trainingRun);
    expect(file.ok ? file.value.entries.length : file.fault).toBe(trainingRun.steps.length + 1);
  });

  test("typed along as it stands is all right, and not a second is lost", () => {
    const run = begun(10);
    for (const step of trainingRun.steps) {
      expect(nextOrder(run)).toBe(step.says);
      run.wait(2);
      run.type(step.type);
    }
    expect(run.wait(1)).toBe(OVER);
    const { answers, extra, corrections } = run.trainer.score();
    expect(answers.map(({ verdict, delay }) => [verdict, delay])).toEqual(
      trainingRun.steps.map(() => ["right", 2000]),
    );
    expect([extra, corrections]).toEqual([[], 0]);
  });
});

describe("orders", () => {
  test("come at the case's own pace, and sooner with speed", () => {
    expect(begun(1).wait(4)).toBe(WAITING);
    expect(begun(1).wait(5)).toBe(first?.says);
    expect(begun(10).wait(0.5)).toBe(first?.says);
  });

  test("wait at the pace of life, so that speed makes nobody late", () => {
    const run = begun(100);
    run.wait(1);
    expect(run.wait(20)).toBe(first?.says);
    run.type("h28000");
    expect(run.trainer.score().answers[0]?.delay).toBe(20_000);
  });

  test("do not wait for an answer: the next one comes in its time, and says that one is open", () => {
    const run = begun(1);
    run.wait(5);
    expect(run.wait(41)).toBe(`${second?.says} (orders before it without an answer: 1)`);
    expect(run.type("a495")).toBe(first?.says);
    expect(run.type("h28000")).toBe(WAITING);
  });
});
