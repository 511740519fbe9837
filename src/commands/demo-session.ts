/** A session that types an invented case by itself, on a clock that runs at a speed of its own. */

import type { AppMessage } from "../console/app.ts";
import { type App, runApp, updateApp } from "../console/app.ts";
import type { Key } from "../console/key.ts";
import { NOTHING_HELD, readKeys } from "../console/key-reader.ts";
import { keysFor } from "../console/keys-for.ts";
import type { Instant } from "../format/instant.ts";
import { openedCase } from "../record/opening.ts";
import type { View } from "../screens/Root.tsx";
import { keepCase } from "../store/keeper.ts";
import { momentOf } from "./invented/play.ts";
import type { Script, Step } from "./invented/script.ts";
import type { Ending, RunningSession } from "./session.ts";

/** Milliseconds between two keys: slow enough to be followed, and quicker in a hurry. */
const betweenKeys = (speed: number): number => Math.min(60, Math.max(4, 3600 / speed));

/** A key still to be pressed; the first of a stroke has the moment that the entry gets. */
type Pressed = { readonly key: Key; readonly at: Instant | null };

/** Plays a script at `speed` times the pace of life. The case is kept in a real file at `path`, so that saved is true. */
export async function openDemo(script: Script, path: string, speed: number): Promise<RunningSession> {
  const file = openedCase(script, script.start);
  let looked = performance.now();
  let reached = script.start.ms;
  let app: App = runApp({ file, clockEarlyBy: null, halfTyped: [] }, null);
  let steps: readonly Step[] = script.steps;
  let toPress: readonly Pressed[] = [];
  const listeners = new Set<() => void>();
  const { promise: ended, resolve } = Promise.withResolvers<Ending>();

  // While keys are pressed the clock goes at the pace of life, and it never runs past the next step: no entry is late.
  const now = (): Instant => {
    const passed = performance.now() - looked;
    looked += passed;
    const [next] = steps;
    const until = next === undefined ? Number.POSITIVE_INFINITY : momentOf(script, next).ms;
    reached =
      toPress.length > 0 ? reached + passed : Math.max(reached, Math.min(until, reached + passed * speed));
    return { ms: Math.floor(reached), offset: script.start.offset };
  };
  const folder = "";
  let view: View = { app, now: now(), folder };

  const dispatch = (message: AppMessage, at = now()): void => {
    const step = updateApp(app, message, at);
    app = step.app;
    for (const effect of step.effects) if (effect.do === "save") keeper.keep(effect.file);
    show();
  };
  const show = (): void => {
    view = { app, now: now(), folder };
    for (const changed of listeners) changed();
  };

  const keeper = keepCase({
    path,
    file: { ...file, entries: [] },
    onSaved: (seq) => dispatch({ name: "saved", seq }),
    onFault: (why) => dispatch({ name: "not-saved", why }),
  });
  keeper.keep(file);

  /** Presses the next key, or begins the next step when its moment has come. */
  const goOn = (): void => {
    const [next, ...later] = toPress;
    const [step, ...rest] = steps;
    if (next) {
      // The time up to this key still went at the pace of life: it is read before the key is off the list.
      const at = now();
      toPress = later;
      dispatch(next.key, next.at ?? at);
      return;
    }
    if (!step) return;
    const at = momentOf(script, step);
    if (now().ms < at.ms) return;
    steps = rest;
    const keys = app.screen === "run" ? keysFor(app.model.file, step.type, at) : [];
    toPress = keys.map((key, place) => ({ key, at: place === 0 ? at : null }));
  };

  const pressing = setInterval(goOn, betweenKeys(speed));
  const ticking = setInterval(show, 200);
  let finished = false;
  const end = async (): Promise<void> => {
    if (!finished) {
      finished = true;
      clearInterval(pressing);
      clearInterval(ticking);
      await keeper.close();
      resolve("left");
    }
    await ended;
  };

  return {
    received: (piece) => {
      const { keys } = readKeys(NOTHING_HELD, piece);
      if (keys.some(leaves)) void end();
    },
    subscribe: (changed) => {
      listeners.add(changed);
      return () => listeners.delete(changed);
    },
    view: () => view,
    ended,
    end,
    failed: new Promise(() => {}),
    typed: () => "The demo types by itself.",
    letGo: () => [],
  };
}

/** The demo types by itself; the person can only leave. */
const leaves = (key: Key): boolean => key.name === "interrupt" || (key.name === "char" && key.char === "q");
