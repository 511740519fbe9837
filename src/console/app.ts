/** Which screen is shown, and how one leads to another. */
import type { Instant } from "../format/instant.ts";
import type { CaseFile } from "../record/case.ts";
import { canBeBroughtBack } from "./half-typed.ts";
import type { Key } from "./key.ts";
import { type Effect, type HalfTyped, type Message, type Model, openModel } from "./model.ts";
import type { Review, Shelved } from "./review.ts";
import { beginReview, caseAbsent, caseArrived, type ReviewStep, updateReview } from "./review-update.ts";
import {
  askedToTakeOver,
  type CaseLine,
  openStart,
  type Start,
  type StartEffect,
  type TakeOver,
  updateStart,
} from "./start.ts";
import { update } from "./update.ts";

export type App = (
  | { readonly screen: "start"; readonly start: Start }
  | { readonly screen: "run"; readonly model: Model }
  | { readonly screen: "review"; readonly review: Review }
) & {
  /** Where leaving a case leads: back to the list, which needs the names of the protocols, or out of the program. */
  readonly home: Home;
};

type Home = { readonly protocols: readonly string[] } | null;

export type AppMessage =
  | Message
  | { readonly name: "cases"; readonly cases: readonly CaseLine[] }
  | ({ readonly name: "opened" } & Opened)
  /** A case read to be looked at. */
  | { readonly name: "reviewed"; readonly file: CaseFile; readonly path: string }
  /** Cases that are kept nowhere, to be looked at. */
  | { readonly name: "shown"; readonly files: readonly CaseFile[] }
  /** `path` is that of a case which was to be looked at. */
  | { readonly name: "could-not"; readonly fault: string; readonly path?: string }
  /** Another's lock is in the way, and the person may decide to take it over. */
  | { readonly name: "locked"; readonly fault: string; readonly path: string; readonly takeOver: TakeOver };

/** A case that has been opened to be written to. */
export type Opened = {
  readonly file: CaseFile;
  /** How many of its entries its own file holds; all of them unless it is said otherwise. */
  readonly saved?: number;
  /** By how much the clock reads earlier than the last entry; `null` when it does not. */
  readonly clockEarlyBy: number | null;
  /** What the person has to know before anything else, such as that the case was damaged. */
  readonly told?: string | null;
  /** What was half typed when the case was last left. */
  readonly halfTyped: readonly HalfTyped[];
};

export type AppEffect = Effect | StartEffect | { readonly do: "list" };

export type AppStep = { readonly app: App; readonly effects: readonly AppEffect[] };

const still = (app: App): AppStep => ({ app, effects: [] });

/** The list of cases, and the order to read them; `protocols` are the names a new case can carry. */
export const startApp = (protocols: readonly string[]): AppStep => ({
  app: { screen: "start", start: openStart(protocols), home: { protocols } },
  effects: [{ do: "list" }],
});

/** The run screen on a case just opened, with what was half typed and what has to be told first. */
export function runApp({ file, saved, clockEarlyBy, halfTyped, told }: Opened, home: Home): App {
  const aside = halfTyped.filter((half) => canBeBroughtBack(half, file));
  const model: Model = {
    ...openModel(file),
    saved: saved ?? file.entries.length,
    aside,
    notice: told ?? (aside.length > 0 ? KEPT : null),
  };
  if (clockEarlyBy === null) return { screen: "run", model, home };
  return { screen: "run", model: { ...model, mode: { name: "clock-early", byMs: clockEarlyBy } }, home };
}

const KEPT = "What was half typed has been kept: Esc brings it back.";

/** Begins a review of cases in hand or of cases still to be read, at one of them. */
export const reviewApp = (shelf: readonly Shelved[], home: Home, place = 0, inHand?: CaseFile): AppStep =>
  reviewed({ home }, beginReview(shelf, place, inHand));

function reviewed({ home }: Pick<App, "home">, { review, leaves, wants }: ReviewStep): AppStep {
  const app: App = { screen: "review", review, home };
  if (leaves) return goneHome(app);
  return { app, effects: wants === null ? [] : [{ do: "open", path: wants, to: "review" }] };
}

/** Pure. A message that the present screen does not know changes nothing. */
export function updateApp(app: App, message: AppMessage, now: Instant): AppStep {
  switch (message.name) {
    case "cases":
      return still(app.screen === "start" ? { ...app, start: { ...app.start, cases: message.cases } } : app);
    case "opened":
      return still(runApp(message, app.home));
    case "reviewed":
      return arrived(app, message.file, message.path);
    case "shown":
      return message.files.length > 0 ? reviewApp(message.files, app.home) : still(app);
    case "could-not":
      return couldNot(app, message.fault, message.path);
    case "locked":
      return still(app.screen === "start" ? { ...app, start: askedToTakeOver(app.start, message) } : app);
    default:
      return onScreen(app, message, now);
  }
}

/** From the list of cases the others that can be read are on the shelf too. */
function arrived(app: App, file: CaseFile, path: string): AppStep {
  if (app.screen === "review") return reviewed(app, caseArrived(app.review, path, file));
  if (app.screen !== "start") return still(app);
  const shelf = (app.start.cases ?? []).filter(({ fault }) => fault === undefined);
  const place = shelf.findIndex((one) => one.path === path);
  return place < 0
    ? reviewApp([{ path }], app.home, 0, file)
    : reviewApp(
        shelf.map((one) => ({ path: one.path })),
        app.home,
        place,
        file,
      );
}

function couldNot(app: App, fault: string, path: string | undefined): AppStep {
  if (app.screen === "review" && path !== undefined)
    return reviewed(app, caseAbsent(app.review, path, fault));
  return still(app.screen === "start" ? { ...app, start: { ...app.start, notice: fault } } : app);
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
      return reviewed(app, updateReview(app.review, message));
    }
    default:
      return app satisfies never;
  }
}

const NEWS = new Set(["saved", "not-saved", "clock-stepped", "copied", "not-copied", "told", "typed"]);

const isNews = (message: Message): message is Exclude<Message, Key> => NEWS.has(message.name);

const goneHome = (app: App): AppStep =>
  app.home ? startApp(app.home.protocols) : { app, effects: [{ do: "quit" }] };
