// What saving takes from Enter to the session's word that the entry is on the disk: all but the terminal and the screen.

import { openDesk } from "../../src/commands/case-desk.ts";
import { openSession, type RunningSession } from "../../src/commands/session.ts";
import { runApp } from "../../src/console/app.ts";
import { readRun } from "../../src/figures/run.ts";
import { bareWrite } from "./bare-write.ts";
import { type Times, timesOf } from "./table.ts";

/** So many that the slowest hundredth is not the one slowest. */
const SAVES = 300;

/** Saves of the case at `path`, a stroke each, and bare writes of the same bytes between them. */
export async function savesOf(folder: string, path: string): Promise<{ saved: Times; bare: Times }> {
  const desk = openDesk(folder, { copyTo: null });
  const held = await desk.hold(path);
  if (held.name !== "opened") throw new Error(`the case was not opened: ${held.name}`);
  const session = openSession(desk, { app: runApp(held, null), effects: [] });
  const saved: number[] = [];
  const bare: number[] = [];
  // The text of the case is made ready while nobody types.
  await new Promise((resolve) => setTimeout(resolve, 1500));
  for (let save = 1; save <= SAVES; save++) {
    session.received("a480");
    drawn(session);
    const from = performance.now();
    const done = untilSaved(session, held.file.entries.length + save);
    session.received("\r");
    await done;
    saved.push(performance.now() - from);
    bare.push(await bareWrite(path));
  }
  await session.end();
  return { saved: timesOf(saved), bare: timesOf(bare) };
}

/** What a drawing has read of the case by the time Enter is pressed. */
function drawn(session: RunningSession): void {
  const { app, now } = session.view();
  if (app.screen === "run") readRun(app.model.file, now.ms);
}

/** Settles with the session's word that so many entries are on the disk. */
const untilSaved = (session: RunningSession, entries: number): Promise<void> =>
  new Promise((resolve) => {
    const stop = session.subscribe(() => {
      const { app } = session.view();
      if (app.screen !== "run" || app.model.saved < entries) return;
      stop();
      resolve();
    });
  });
