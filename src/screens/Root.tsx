/** The root: the one place that reads keys, and the one that knows how big the terminal is. */
import { useInput, usePaste, useStdin, useWindowSize } from "ink";
import { useEffect, useSyncExternalStore } from "react";
import type { App } from "../console/app.ts";
import type { Instant } from "../format/instant.ts";
import { ReviewScreen } from "./ReviewScreen.tsx";
import { RunScreen } from "./RunScreen.tsx";
import { StartScreen } from "./StartScreen.tsx";
import type { Size } from "./size.ts";

/** What is drawn: changes with every key, every piece of news and every second. */
export type View = { readonly app: App; readonly now: Instant; readonly folder: string };

/** The session as the screens see it. */
export type Session = {
  /** A piece of what the terminal sent. */
  readonly received: (piece: string) => void;
  readonly subscribe: (changed: () => void) => () => void;
  readonly view: () => View;
};

export function Root({ session }: { session: Session }) {
  useKeyboard(session);
  const { columns, rows } = useWindowSize();
  const view = useSyncExternalStore(session.subscribe, session.view);
  return <Screen view={view} size={{ columns, rows }} />;
}

/**
 * Ink's own readers keep the terminal in raw mode and in bracketed paste, and put both back; what they would tell of
 * keys depends on how the bytes were cut into reads, so the bytes are read beside them.
 */
function useKeyboard({ received }: Session) {
  useInput(() => {});
  usePaste(() => {});
  const { stdin } = useStdin();
  useEffect(() => {
    const read = (piece: Buffer | string) => received(piece.toString());
    stdin.on("data", read);
    return () => void stdin.off("data", read);
  }, [stdin, received]);
}

/** The screen for a view, in a terminal of a size. */
export function Screen({ view: { app, now, folder }, size }: { view: View; size: Size }) {
  switch (app.screen) {
    case "start":
      return <StartScreen start={app.start} now={now} size={size} folder={folder} />;
    case "run":
      return <RunScreen model={app.model} now={now} size={size} />;
    case "review":
      return <ReviewScreen review={app.review} size={size} />;
    default:
      return app satisfies never;
  }
}
