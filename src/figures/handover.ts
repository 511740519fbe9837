/** The handover of the pump: situation, background, assessment, recommendation, composed from the record. */

import { folded } from "./folded.ts";
import { background } from "./handover-background.ts";
import { recommendation } from "./handover-next.ts";
import { assessment, situation } from "./handover-now.ts";
import type { Run } from "./run.ts";

const COLUMN = 3;

/** The summary as it is read out, a line each, none wider than 76 columns but for a single longer word. */
export const handoverSummary = (run: Run): readonly string[] =>
  (
    [
      ["S", situation(run)],
      ["B", background(run)],
      ["A", assessment(run)],
      ["R", recommendation(run)],
    ] as const
  ).flatMap(([letter, lines]) => lines.flatMap((line, i) => folded(i === 0 ? letter : "", line, COLUMN)));
