/** The session: keys and news go into `updateApp`, effects go out to the store, and the view changes. */
import { type App, type AppEffect, type AppMessage, startApp, updateApp } from "../console/app.ts";
import type { Key } from "../console/key.ts";
import { NOTHING_HELD, patienceFor, readKeys, settleKeys } from "../console/key-reader.ts";
import type { Instant } from "../format/instant.ts";
import type { Session, View } from "../screens/Root.tsx";
import { type Clock, openClock } from "../store/clock.ts";
import type { CaseDesk } from "./case-desk.ts";

export type RunningSession = Session & {
  /** Settles when the person has left and everything kept has been let go; says what is to be done next. */
  readonly ended: Promise<Ending>;
  /** Ends from outside: saves a last time and lets the case go. */
  readonly end: () => Promise<void>;
};

export type Ending = "left" | "demo";

/** The desk never rejects: what goes wrong there comes back as a message. */
const wait = (work: Promise<void>): void => void work;

/** Starts a session with an app and its first effects. `desk` holds the case that is being written. */
export function openSession(
  desk: CaseDesk,
  first: { app: App; effects: readonly AppEffect[] } = startApp(desk.protocols),
): RunningSession {
  let { app } = first;
  let clock: Clock = desk.clock() ?? openClock();
  let held = NOTHING_HELD;
  let patience: ReturnType<typeof setTimeout> | undefined;
  const listeners = new Set<() => void>();
  const { promise: ended, resolve: endWith } = Promise.withResolvers<Ending>();
  const readNow = (): Instant => clock.now();
  let view: View = { app, now: readNow(), folder: desk.folder };

  const show = () => {
    view = { app, now: readNow(), folder: desk.folder };
    for (const changed of listeners) changed();
  };

  const dispatch = (message: AppMessage): void => {
    const step = updateApp(app, message, readNow());
    app = step.app;
    if (app.screen === "run") desk.keepHalfTyped(app.model);
    for (const effect of step.effects) perform(effect);
    show();
  };

  const perform = (effect: AppEffect): void => {
    switch (effect.do) {
      case "save":
        desk.keep(effect.file);
        break;
      case "leave":
        wait(desk.letGo());
        break;
      case "list":
        wait(desk.list().then((cases) => dispatch({ name: "cases", cases })));
        break;
      case "create":
        wait(desk.create(effect).then(opened));
        break;
      case "open":
        wait(
          effect.to === "run" ? desk.hold(effect.path).then(opened) : desk.read(effect.path).then(dispatch),
        );
        break;
      case "samples":
        dispatch({ name: "shown", files: desk.samples() });
        break;
      case "demo":
        finish("demo");
        break;
      case "quit":
        finish("left");
        break;
      default:
        effect satisfies never;
    }
  };

  const opened = (message: AppMessage): void => {
    clock = desk.clock() ?? clock;
    dispatch(message);
  };

  const finish = (ending: Ending): void => {
    clearTimeout(tick);
    clearTimeout(patience);
    wait(desk.letGo().then(() => endWith(ending)));
  };

  const keysRead = (keys: readonly Key[]): void => {
    for (const key of keys) dispatch(key);
  };

  const received = (piece: string): void => {
    clearTimeout(patience);
    const read = readKeys(held, piece);
    held = read.held;
    keysRead(read.keys);
    const wait = patienceFor(held);
    if (wait !== null) patience = setTimeout(settle, wait);
  };

  const settle = (): void => {
    const settled = settleKeys(held);
    held = settled.held;
    keysRead(settled.keys);
  };

  // A tick falls on the full second, so that the clock on the screen changes when the clock on the wall does.
  const nextTick = () => setTimeout(ticked, 1000 - (readNow().ms % 1000));
  const ticked = (): void => {
    tick = nextTick();
    const stepped = app.screen === "run" ? clock.check() : null;
    if (stepped) dispatch({ name: "clock-stepped", stepMs: stepped.stepMs });
    else show();
  };
  let tick = nextTick();

  desk.listen(dispatch);
  for (const effect of first.effects) perform(effect);

  return {
    received,
    subscribe: (changed) => {
      listeners.add(changed);
      return () => listeners.delete(changed);
    },
    view: () => view,
    ended,
    end: async () => {
      finish("left");
      await ended;
    },
  };
}
