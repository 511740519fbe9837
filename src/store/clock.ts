/** The session's clock: it starts at the wall's time and then runs by itself, whatever is done to the wall clock. */
import { uptime } from "node:os";
import { type Instant, msOf } from "../format/instant.ts";
import type { CaseFile } from "../record/case.ts";
import type { Entry } from "../record/entry.ts";
import { ofKind, standing } from "../record/standing.ts";

export type Sources = {
  /** The wall clock in milliseconds since the epoch; people and time servers move it. */
  wall(): number;
  /** Milliseconds that only ever go up, and may stand still while the computer sleeps. */
  monotonic(): number;
  /** Seconds since the computer was started, sleep among them. */
  uptime(): number;
  /** Minutes east of UTC at a time of the wall clock. */
  offset(ms: number): number;
};

/** The wall clock was moved by so many milliseconds against the session's time. */
type Stepped = { readonly stepMs: number };

export type Clock = {
  /** The session's time. Never earlier than any time it gave before. */
  now(): Instant;
  /** Whether the wall clock was moved since the last look: told once, to become a `clock` entry. */
  check(): Stepped | null;
};

export const realSources: Sources = {
  wall: Date.now,
  monotonic: () => Number(process.hrtime.bigint()) / 1e6,
  uptime: uptimeOrLess,
  offset: (ms) => -new Date(ms).getTimezoneOffset(),
};

/** More than time servers and the coarse steps of uptime make up. */
const STEP = 2000;
/** Uptime comes in whole seconds on some systems: only more than one of them is sleep. */
const SLEEP = 1500;
/** Two clocks read further apart than this can't be compared. */
const APART = 50;
const TRIES = 5;

/**
 * Opens the clock. `recordedStepMs` is what earlier sessions of the case saw the wall clock move in all
 * (`recordedSteps`): the record's time goes on as if it had never moved.
 */
export function openClock(sources: Sources = realSources, recordedStepMs = 0): Clock {
  const first = look(sources);
  let ms = first.wall - recordedStepMs;
  let monotonic = first.monotonic;
  let lag = first.lag;
  let seen = recordedStepMs;

  /** Goes on by what has passed and by what was slept; the wall's time, or `null` when it can't be compared now. */
  const advance = (): number | null => {
    const looked = look(sources);
    ms += Math.max(0, looked.monotonic - monotonic);
    monotonic = Math.max(monotonic, looked.monotonic);
    if (!looked.together) return null;
    if (looked.lag - lag > SLEEP) {
      ms += looked.lag - lag;
      lag = looked.lag;
    }
    return looked.wall;
  };

  return {
    now() {
      advance();
      return { ms: Math.floor(ms), offset: sources.offset(sources.wall()) };
    },
    check() {
      const wall = advance();
      const stepMs = wall === null ? 0 : Math.round(wall - ms - seen);
      if (Math.abs(stepMs) <= STEP) return null;
      seen += stepMs;
      return { stepMs };
    },
  };
}

/** The sum of what the wall clock was seen to move during a case, in milliseconds. */
export const recordedSteps = (entries: readonly Entry[]): number =>
  ofKind(standing(entries).facts, "clock").reduce((sum, { entry }) => sum + entry.stepMs, 0);

/** By how many milliseconds `now` lies before the last thing written; `null` when it does not. */
export function startsBefore({ entries }: Pick<CaseFile, "entries">, now: Instant): number | null {
  const last = entries.at(-1);
  const early = last === undefined ? 0 : msOf(last.loggedAt) - now.ms;
  return early > 0 ? early : null;
}

/**
 * Reads the clocks. `lag` is how far the monotonic clock is behind the uptime: it grows by what is slept. The process
 * can be held up between two readings, and the gap would look like sleep or a step: then it looks again.
 */
function look({ wall, monotonic, uptime: up }: Sources) {
  for (let tries = 1; ; tries++) {
    const before = monotonic();
    const seen = { wall: wall(), lag: up() * 1000 - before };
    const after = monotonic();
    const together = after - before <= APART;
    if (together || tries === TRIES) return { ...seen, monotonic: after, together };
  }
}

function uptimeOrLess(): number {
  try {
    return uptime();
  } catch {
    return performance.now() / 1000;
  }
}
