/** Putting a session on the terminal, and taking it off again whatever happens. */
import { render } from "ink";
import { LookContext } from "../screens/chart-dots.ts";
import { Root } from "../screens/Root.tsx";
import { within } from "../store/waiting.ts";
import type { LetGo } from "./case-desk.ts";
import { plainMode } from "./plain-mode.ts";
import type { RunningSession } from "./session.ts";
import { CASE_FAULT, complain, DONE } from "./speak.ts";
import { lookOf } from "./terminal.ts";

/** Signals of a terminal that is closed or a computer that goes down: what is kept is saved before the program ends. */
const SIGNALS = ["SIGHUP", "SIGTERM", "SIGINT"] as const;

/** Whether there is a terminal to draw on and to read keys from. */
export const hasTerminal = (): boolean => Boolean(process.stdin.isTTY && process.stdout.isTTY);

/**
 * Shows a session until it ends, and gives the code to end with. Where a screen fails, the record goes on in plain mode;
 * what could not be saved is said last, on a terminal put back in order.
 */
export async function show(session: RunningSession): Promise<number> {
  // Before the first frame, so that no key is echoed and Ctrl-C is a key from the start.
  process.stdin.setRawMode(true);
  // Writing to a terminal that has gone must not end the program before the last save.
  const gone = () => {};
  process.stdout.on("error", gone);
  process.stdin.on("error", gone);
  const ink = render(
    <LookContext value={lookOf(process.env)}>
      <Root session={session} />
    </LookContext>,
    {
      alternateScreen: true,
      incrementalRendering: true,
      interactive: true,
      exitOnCtrlC: false,
      // A key and the word that it is saved come within one frame of the usual pace; both are drawn at once.
      maxFps: 200,
    },
  );
  const { promise: thrown, reject: throwOut } = Promise.withResolvers<never>();
  const ended = () => void session.end();
  // `on`, not `once`: closing a terminal can send the signal twice.
  for (const signal of SIGNALS) process.on(signal, ended);
  for (const event of FAILURES) process.on(event, throwOut);
  try {
    const failed = session.failed.then((error) => Promise.reject(error));
    await Promise.race([session.ended, ink.waitUntilExit(), failed, thrown]);
  } catch (error) {
    ink.unmount();
    // What Ink still does to the keyboard at its end would take keys from the lines.
    await within(
      END_OF_SCREEN,
      ink.waitUntilExit().catch(() => undefined),
      undefined,
    );
    process.stdin.setRawMode(false);
    process.stdin.ref();
    await plainMode(session, error instanceof Error ? error.message : String(error));
  } finally {
    await session.end();
    ink.unmount();
    for (const signal of SIGNALS) process.off(signal, ended);
    for (const event of FAILURES) process.off(event, throwOut);
  }
  return whatIsLeft(session.letGo());
}

const END_OF_SCREEN = 500;

/** What nobody caught: the screen is given up for it, the record is not. */
const FAILURES = ["uncaughtException", "unhandledRejection"] as const;

function whatIsLeft(cases: readonly LetGo[]): number {
  const lacking = cases.filter(({ unsaved }) => unsaved > 0);
  for (const one of lacking) complain(lacks(one), CASE_FAULT);
  // A disk that owes an answer keeps the process from ending in any other way.
  if (cases.some(({ hanging }) => hanging)) process.kill(process.pid, "SIGKILL");
  return lacking.length === 0 ? DONE : CASE_FAULT;
}

function lacks({ unsaved, keptAt }: LetGo): string {
  const entries = unsaved === 1 ? "entry" : `${unsaved} entries`;
  return keptAt === null
    ? `NOT SAVED: the last ${entries} could be kept nowhere and ${unsaved === 1 ? "is" : "are"} lost.`
    : `NOT SAVED in the case's own folder: the last ${entries}. The whole case is kept as ${keptAt}; opening the case again takes in what is missing.`;
}
