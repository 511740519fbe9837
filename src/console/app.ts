/** Which screen is shown, and how one leads to another. */
import type { Instant } from "../format/instant.ts";
import type { CaseFile } from "../record/case.ts";
import { canBeBroughtBack } from "./half-typed.ts";
import type { Key } from "./key.ts";
import { type Effect, type HalfTyped, type Message, type Model, openModel } from "./model.ts";
import { openReview, type Review, updateReview } from "./review.ts";
import { type CaseLine, openStart, type Start, type StartEffect, updateStart } from "./start.ts";
import { update } from "./update.ts";

export type App = (
  | { readonly screen: "start"; readonly start: Start }
  | { readonly screen: "run"; readonly model: Model }
  | { readonly screen: "review"; readonly review: Review }
) & {
  /** Where leaving a case leads: back to the list, which needs the names of the protocols, or out of the program. */
  readonly home: Home;
};

export type Home = { readonly protocols: readonly string[] } | null;

export type AppMessage =
  | Message
  | { readonly name: "cases"; readonly cases: readonly CaseLine[] }
  | ({ readonly name: "opened" } & Opened)
  | { readonly name: "reviewed"; readonly files: readonly CaseFile[] }
  | { readonly name: "could-not"; readonly fault: string };

/** A case that has been opened to be written to. */
export type Opened = {
  readonly file: CaseFile;
  /** By how much the clock reads earlier than the last entry; `null` when it does not. */
  readonly clockEarlyBy: number | null;
  /** What was half typed when the case was last left. */
  readonly halfTyped: readonly HalfTyped[];
};

export type AppEffect = Effect | StartEffect | { readonly do: "list" };

export type AppStep = { readonly app: App; readonly effects: readonly AppEffect[] };

const still = (app: App): AppStep => ({ app, effects: [] });

export const startApp = (protocols: readonly string[]): AppStep => ({
  app: { screen: "start", start: openStart(protocols), home: { protocols } },
  effects: [{ do: "list" }],
});

export function runApp({ file, clockEarlyBy, halfTyped }: Opened, home: Home): App {
  const aside = halfTyped.filter((half) => canBeBroughtBack(half, file));
  const model: Model = { ...openModel(file), aside, notice: aside.length > 0 ? KEPT : null };
  if (clockEarlyBy === null) return { screen: "run", model, home };
  return { screen: "run", model: { ...model, mode: { name: "clock-early", byMs: clockEarlyBy } }, home };
}

const KEPT = "What was half typed has been kept: Esc brings it back.";

export const reviewApp = (files: readonly CaseFile[], home: Home): App => ({
  screen: "review",
  review: openReview(files[0] as CaseFile, files),
  home,
});

/** Pure. A message that the present screen does not know changes nothing. */
export function updateApp(app: App, message: AppMessage, now: Instant): AppStep {
  switch (message.name) {
    case "cases":
      return still(app.screen === "start" ? { ...app, start: { ...app.start, cases: message.cases } } : app);
    case "opened":
      return still(runApp(message, app.home));
    case "reviewed":
      return still(message.files.length > 0 ? reviewApp(message.files, app.home) : app);
    case "could-not":
      return still(app.screen === "start" ? { ...app, start: { ...app.start, notice: message.fault } } : app);
    default:
      return onScreen(app, message, now);
  }
}

function onScreen(app: App, message: Message, now: Instant): AppStep {
  switch (app.screen) {
    case "start": {
      if (isNews(message)) return still(app);
      const { start, effects } = updateStart(app.start, message);
      return { app: { ...app, start }, effects };
    }
    case "run": {
      const { model, effects } = update(app.model, message, now);
      const leaves = effects.some((effect) => effect.do === "leave");
      return leaves
        ? { ...goneHome(app), effects: [...effects, ...goneHome(app).effects] }
        : { app: { ...app, model }, effects };
    }
    case "review": {
      if (isNews(message)) return still(app);
      const { review, leaves } = updateReview(app.review, message);
      return leaves ? goneHome(app) : still({ ...app, review });
    }
    default:
      return app satisfies never;
  }
}

const isNews = (message: Message): message is Exclude<Message, Key> =>
  message.name === "saved" || message.name === "not-saved" || message.name === "clock-stepped";

const goneHome = (app: App): AppStep =>
  app.home ? startApp(app.home.protocols) : { app, effects: [{ do: "quit" }] };
