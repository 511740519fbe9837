/** `pumpside demo --typed`: an invented case typed along with the orders in the room, and its result. */
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { runApp } from "../console/app.ts";
import { trainingText } from "../reports/training-text.ts";
import { trainingRun } from "./invented/training-run.ts";
import { openSession } from "./session.ts";
import { hasTerminal, show } from "./show.tsx";
import { CASE_FAULT, complain, say, WRONG_CALL } from "./speak.ts";
import { trainerOf } from "./trainer.ts";
import { trainingDesk } from "./training-desk.ts";

/** The case lies in a folder of its own that goes with it. */
export async function trainingInConsole(speed: number): Promise<number> {
  if (!hasTerminal())
    return complain(
      "a run to be typed along needs a terminal: start it in one, or leave out --typed.",
      WRONG_CALL,
    );
  const trainer = trainerOf(trainingRun, speed);
  if (!trainer.ok) return complain(trainer.fault, CASE_FAULT);
  const { opened, score, all } = trainer.value;
  const folder = await mkdtemp(join(tmpdir(), "pumpside-training-"));
  try {
    const desk = trainingDesk(trainer.value, join(folder, "case.json"));
    const app = runApp({ file: opened, clockEarlyBy: null, halfTyped: [] }, null);
    const code = await show(openSession(desk, { app, effects: [] }));
    say(trainingText(score(), all, opened.protocol));
    return code;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
