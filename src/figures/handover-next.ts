/** Handover, recommendation: what comes next, the limits that hold, and what was said to be remembered. */
import { dueText } from "../format/duration.ts";
import { clockTimeOf } from "../format/instant.ts";
import { plain } from "../format/number.ts";
import { harmless } from "../format/text.ts";
import { ofKind } from "../record/standing.ts";
import { openAt } from "./checks.ts";
import { dueOf } from "./due.ts";
import type { Run } from "./run.ts";

/** Timed tasks and notes that are read out. */
const TASKS = 3;
const NOTES = 3;

/** Lines of words: the timed tasks, the limits agreed, open checklists, the last notes. */
export function recommendation(run: Run): readonly string[] {
  const { protocol, record } = run.course;
  const { meanPressure, haematocritFloor, oxygenDelivery } = protocol.watch;
  const { actForBypass } = protocol.coagulation;
  const tasks = dueOf(run)
    .slice(0, TASKS)
    .map(({ text, due }) => `${harmless(text)} ${dueText(due - run.now)}`);
  const notes = ofKind(record.facts, "note").slice(-NOTES);
  const open = openAt(protocol, record.facts, "bypass-off");
  return [
    `next: ${tasks.length > 0 ? tasks.join(" · ") : "nothing is due"}`,
    `limits: MAP ${plain(meanPressure.low)}–${plain(meanPressure.high)} mmHg · DO2i ${plain(oxygenDelivery.value)} · Hct ${plain(haematocritFloor.value)} % · ACT ${plain(actForBypass.value)} s`,
    ...(open.length > 0
      ? [`checklists open: ${open.map(({ list }) => harmless(list.name)).join(", ")}`]
      : []),
    ...notes.map(({ entry }) => `note ${clockTimeOf(entry.at).slice(0, 5)}: ${harmless(entry.text)}`),
    "who is called back with results: agree now",
  ];
}
