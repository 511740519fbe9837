/** The root: the one place that reads keys, and the one that knows how big the terminal is. */
import { Box, Text, useInput, useIsScreenReaderEnabled, usePaste, useStdin, useWindowSize } from "ink";
import { useEffect, useSyncExternalStore } from "react";
import type { App } from "../console/app.ts";
import type { Mode } from "../console/model.ts";
import type { Instant } from "../format/instant.ts";
import { ReviewScreen } from "./ReviewScreen.tsx";
import { RunScreen } from "./RunScreen.tsx";
import { StartScreen } from "./StartScreen.tsx";
import { LEAST, type Size } from "./size.ts";
import { spokenRun } from "./spoken.ts";

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
  return useIsScreenReaderEnabled() ? <Spoken session={session} /> : <Drawn session={session} />;
}

function Drawn({ session }: { session: Session }) {
  const { columns, rows } = useWindowSize();
  const view = useSyncExternalStore(session.subscribe, session.view);
  return <Screen view={view} size={{ columns, rows }} />;
}

/** For a screen reader: sentences for the run, which change once a minute or with a key, and plain rows elsewhere. */
function Spoken({ session }: { session: Session }) {
  const sentences = useSyncExternalStore(session.subscribe, () => {
    const { app, now } = session.view();
    return app.screen === "run" && !needsItsScreen(app.model.mode)
      ? spokenRun(app.model, now).join("\n")
      : null;
  });
  if (sentences === null) return <SpokenElsewhere session={session} />;
  return (
    <Box flexDirection="column">
      <Text>{sentences}</Text>
    </Box>
  );
}

/** Too small for columns, so that what is on the screen is a row each. */
const IN_ROWS: Size = { columns: LEAST.columns - 1, rows: LEAST.rows };

function SpokenElsewhere({ session }: { session: Session }) {
  const view = useSyncExternalStore(session.subscribe, session.view);
  return <Screen view={view} size={IN_ROWS} />;
}

/** Forms, checklists and help say more than a sentence. */
const needsItsScreen = ({ name }: Mode): boolean =>
  name === "form" || name === "checklist" || name === "help";

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
