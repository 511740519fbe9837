/** The trainer: says each order of an invented case when its moment has come, and keeps the clock of the run. */
import type { Instant } from "../format/instant.ts";
import { type Outcome, taken } from "../format/outcome.ts";
import type { CaseFile } from "../record/case.ts";
import type { Entry } from "../record/entry.ts";
import { openedCase } from "../record/opening.ts";
import { type Order, type Score, scoreOf } from "../reports/training.ts";
import { momentOf, played } from "./invented/play.ts";
import type { OrderStep, TrainingScript } from "./invented/training-run.ts";

export type Trainer = {
  /** The case as it is to begin with. */
  readonly opened: CaseFile;
  readonly now: () => Instant;
  /** Hears of the record as it grows. */
  readonly keep: (file: CaseFile) => void;
  /** Says what has become due, and gives what the person should read now. */
  readonly look: () => string;
  readonly score: () => Score;
  /** How many orders there are. */
  readonly all: number;
};

export const WAITING = "Listen for the next order.";
export const OVER = "That was the last order: q and Enter leave, and the result follows.";

/**
 * Time goes `speed` times as fast as life while everybody waits for the next order, and at the pace of life from an
 * order to its answer, so that delays are a person's own. `monotonic` gives milliseconds. A fault is that of the script.
 */
export function trainerOf(
  script: TrainingScript,
  speed: number,
  monotonic: () => number = () => performance.now(),
): Outcome<Trainer> {
  const expected = expectedOf(script);
  if (!expected.ok) return expected;
  const opened = openedCase(script, script.start);
  const [first] = script.steps;
  let file = opened;
  let looked = monotonic();
  let reached = first === undefined ? script.start.ms : momentOf(script, first).ms - LEAD;
  let said: readonly Order[] = [];

  const score = (): Score => scoreOf(said, file);
  const unanswered = (): readonly Order[] =>
    score().answers.flatMap(({ verdict, order }) => (verdict === "missed" ? [order] : []));
  const next = (): OrderStep | undefined => script.steps[said.length];

  const now = (): Instant => {
    const passed = monotonic() - looked;
    looked += passed;
    const step = next();
    const until = step === undefined ? Number.POSITIVE_INFINITY : momentOf(script, step).ms;
    const isWaiting = step !== undefined && unanswered().length === 0;
    reached = isWaiting ? Math.max(reached, Math.min(until, reached + passed * speed)) : reached + passed;
    return { ms: Math.floor(reached), offset: script.start.offset };
  };

  return taken({
    opened,
    now,
    all: script.steps.length,
    score,
    keep(longer) {
      // Up to the answer, time went at the pace of life.
      now();
      file = longer;
    },
    look() {
      const { ms } = now();
      const step = next();
      if (step && ms >= momentOf(script, step).ms)
        said = [...said, { says: step.says, at: ms, expected: expected.value[said.length] as Entry }];
      const open = unanswered();
      const [last] = open.slice(-1);
      if (last === undefined) return next() === undefined ? OVER : WAITING;
      return open.length === 1
        ? last.says
        : `${last.says} (orders before it without an answer: ${open.length - 1})`;
    },
  });
}

/** From the opened case to the first order. */
const LEAD = 5000;

/** The entry that answers each order, as the console makes it of the script's own stroke. */
function expectedOf(script: TrainingScript): Outcome<readonly Entry[]> {
  const file = played(script);
  return file.ok ? taken(file.value.entries.slice(1)) : file;
}
