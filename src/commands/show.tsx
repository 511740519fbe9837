/** Putting a session on the terminal, and taking it off again whatever happens. */
import { render } from "ink";
import { Root } from "../screens/Root.tsx";
import type { RunningSession } from "./session.ts";

/** Signals of a terminal that is closed or a computer that goes down: what is kept is saved before the program ends. */
const SIGNALS = ["SIGHUP", "SIGTERM", "SIGINT"] as const;

/** Whether there is a terminal to draw on and to read keys from. */
export const hasTerminal = (): boolean => Boolean(process.stdin.isTTY && process.stdout.isTTY);

/** Shows a session until it ends. Rejects with what a screen threw, after everything kept has been saved. */
export async function show(session: RunningSession): Promise<void> {
  // Before the first frame, so that no key is echoed and Ctrl-C is a key from the start.
  process.stdin.setRawMode(true);
  // Writing to a terminal that has gone must not end the program before the last save.
  const gone = () => {};
  process.stdout.on("error", gone);
  process.stdin.on("error", gone);
  const ink = render(<Root session={session} />, {
    alternateScreen: true,
    incrementalRendering: true,
    interactive: true,
    exitOnCtrlC: false,
    maxFps: 60,
  });
  const ended = () => void session.end();
  // `on`, not `once`: closing a terminal can send the signal twice.
  for (const signal of SIGNALS) process.on(signal, ended);
  try {
    await Promise.race([session.ended, ink.waitUntilExit()]);
    await session.end();
  } finally {
    ink.unmount();
    for (const signal of SIGNALS) process.off(signal, ended);
  }
}
