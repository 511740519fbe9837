/** The session: keys and news go into `updateApp`, effects go out to the store, and the view changes. */
import { type App, type AppEffect, type AppMessage, startApp, updateApp } from "../console/app.ts";
import type { Key } from "../console/key.ts";
import { NOTHING_HELD, patienceFor, readKeys, settleKeys } from "../console/key-reader.ts";
import { withEntry } from "../console/write.ts";
import type { Instant } from "../format/instant.ts";
import { harmless } from "../format/text.ts";
import type { Session, View } from "../screens/Root.tsx";
import { type Clock, openClock } from "../store/clock.ts";
import { keepHeapSmall, memoryIsLow } from "../store/memory.ts";
import type { hangBell } from "./bell.ts";
import type { CaseDesk, LetGo } from "./case-desk.ts";

export type RunningSession = Session & {
  /** Settles when the person has left and everything kept has been let go; says what is to be done next. */
  readonly ended: Promise<Ending>;
  /** Ends from outside: saves a last time and lets the case go. */
  readonly end: () => Promise<void>;
  /** Settles with what was thrown where nothing should have been; the session goes on as it was before. */
  readonly failed: Promise<unknown>;
  /** Writes a whole stroke typed as one line; why not, in a sentence, or `null`. Never throws. */
  readonly typed: (line: string) => string | null;
  /** What came of each case that was let go, when it last was. */
  readonly letGo: () => readonly LetGo[];
};

export type Ending = "left" | "demo";

const MEMORY_LOW =
  "The program's memory is nearly used up; everything is still being saved. Leave (q) and open the case again: nothing is lost by it.";

/** Milliseconds that drawing an entry waits for its save: a good disk has answered by then, and one drawing tells both. */
const SAVE_FIRST = 16;

/** The desk never rejects: what goes wrong there comes back as a message. */
const wait = (work: Promise<void>): void => void work;

/** Starts a session with an app and its first effects. `desk` holds the case that is being written. */
export function openSession(
  desk: CaseDesk,
  first: { app: App; effects: readonly AppEffect[] } = startApp(desk.protocols),
  bell?: ReturnType<typeof hangBell>,
): RunningSession {
  let { app } = first;
  let clock: Clock = desk.clock() ?? openClock();
  let held = NOTHING_HELD;
  let patience: ReturnType<typeof setTimeout> | undefined;
  let drawing: ReturnType<typeof setTimeout> | undefined;
  const listeners = new Set<() => void>();
  const { promise: ended, resolve: endWith } = Promise.withResolvers<Ending>();
  const readNow = (): Instant => clock.now();
  const { promise: failed, resolve: failWith } = Promise.withResolvers<unknown>();
  const letGoOf = new Map<string, LetGo>();
  let lettingGo = Promise.resolve();
  let memoryTold = false;
  let view: View = { app, now: readNow(), folder: desk.folder };

  const draw = () => {
    clearTimeout(drawing);
    for (const changed of listeners) changed();
  };

  const show = (inMs = 0) => {
    view = { app, now: readNow(), folder: desk.folder };
    if (inMs === 0) return draw();
    clearTimeout(drawing);
    drawing = setTimeout(draw, inMs);
  };

  const dispatch = (message: AppMessage): void => {
    try {
      act(message);
    } catch (error) {
      failWith(error);
    }
  };

  const act = (message: AppMessage): void => {
    const step = updateApp(app, message, readNow());
    app = step.app;
    if (app.screen === "run") desk.keepHalfTyped(app.model);
    for (const effect of step.effects) perform(effect);
    show(step.effects.some((effect) => effect.do === "save") ? SAVE_FIRST : 0);
  };

  const perform = (effect: AppEffect): void => {
    switch (effect.do) {
      case "save":
        desk.keep(effect.file);
        break;
      case "leave":
        wait(letGo());
        break;
      case "list":
        wait(desk.list().then((cases) => dispatch({ name: "cases", cases })));
        break;
      case "create":
        wait(desk.create(effect).then(opened));
        break;
      case "open":
        wait(
          effect.to === "run"
            ? desk.hold(effect.path, effect.takeOver).then(opened)
            : desk.read(effect.path).then(dispatch),
        );
        break;
      case "samples":
        wait(desk.samples().then((files) => dispatch({ name: "shown", files })));
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
    clearTimeout(drawing);
    wait(letGo().then(() => endWith(ending)));
  };

  // Who leaves and ends at once waits for the last save all the same.
  const letGo = (): Promise<void> => {
    lettingGo = Promise.all([desk.letGo(), lettingGo]).then(([closed]) => {
      // A case that is opened again takes in what it had lacked.
      letGoOf.set(closed.path, closed);
    });
    return lettingGo;
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
    if (app.screen === "run") bell?.(app.model.file, readNow().ms);
    keepHeapSmall();
    if (!memoryTold && memoryIsLow()) {
      memoryTold = true;
      dispatch({ name: "told", words: MEMORY_LOW });
    }
  };

  /** Also where a stroke can't be read for a fault of ours: then what was typed is kept as a note. */
  const typed = (line: string): string | null => {
    if (app.screen !== "run") return "No case is open.";
    const before = app.model.file;
    try {
      act({ name: "typed", line });
    } catch {
      const now = readNow();
      const file = withEntry(before, { kind: "note", text: harmless(line) }, { at: now, now, typed: line });
      app = { ...app, model: { ...app.model, file } };
      desk.keep(file);
    }
    return app.screen === "run" && app.model.file === before ? app.model.notice : null;
  };
  let tick = nextTick();

  desk.listen(dispatch);
  // Whoever opens the session draws it at once: what it begins with comes after the first frame.
  queueMicrotask(() => {
    for (const effect of first.effects) perform(effect);
  });

  return {
    received,
    subscribe: (changed) => {
      listeners.add(changed);
      return () => listeners.delete(changed);
    },
    view: () => view,
    ended,
    failed,
    typed,
    letGo: () => [...letGoOf.values()],
    end: async () => {
      finish("left");
      await ended;
    },
  };
}
