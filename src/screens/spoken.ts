/** The run in sentences for a screen reader, in the order in which they are asked for; clocks by the minute, so that it is not read anew each second. */
import { isUnsaved, type Model, typingIn } from "../console/model.ts";
import { asked, meaning } from "../console/open-line.ts";
import { type Due, dueOf } from "../figures/due.ts";
import { entryWords } from "../figures/entry-words.ts";
import { type Run, readRun } from "../figures/run.ts";
import type { Timer } from "../figures/timers.ts";
import { minutesText } from "../format/duration.ts";
import { clockTimeOf, type Instant } from "../format/instant.ts";
import { plain } from "../format/number.ts";
import { harmless, listed } from "../format/text.ts";
import { savedText } from "./TitleBar.tsx";

/** What is typed and the last entry change with a key, the rest at most once a minute. */
export function spokenRun(model: Model, now: Instant): string[] {
  const run = readRun(model.file, now.ms);
  return [
    typedText(model),
    model.notice ?? "",
    unsavedText(model),
    clocksText(run),
    dueSentence(run),
    lastText(model),
    `${run.course.phase}, ${harmless(model.file.label)}, ${savedText(model)}.`,
  ].filter((sentence) => sentence !== "");
}

function typedText(model: Model): string {
  const typing = typingIn(model.mode);
  if (typing === null) return "";
  const { label, asks } = asked(model);
  const means = meaning(model).text || asks;
  return `${harmless(`${label || "typing"}: ${typing.text}`)}${means === "" ? "" : `. ${means}`}`;
}

const unsavedText = (model: Model): string =>
  isUnsaved(model) && model.trouble !== null ? `NOT SAVED: ${model.trouble}; trying again.` : "";

function clocksText({ timers, running, nextDose, act, now }: Run): string {
  const dose = running
    ? `arrest dose running ${minutesText(now - running.start)}`
    : nextDose.since === null
      ? "no arrest dose yet"
      : `last arrest dose ${minutesText(nextDose.since)} ago, ${leftText(nextDose.due, now)}`;
  const clotting = act ? `ACT ${plain(act.seconds)} seconds, ${minutesText(act.age)} ago` : "no ACT yet";
  return `${timerText("bypass", timers.bypass)}; ${timerText("clamp", timers.arrest)}; ${dose}; ${clotting}.`;
}

const timerText = (name: string, { total, current }: Timer): string =>
  total === null ? `no ${name} yet` : `${name} ${current === null ? "off, " : "on, "}${minutesText(total)}`;

const leftText = (due: number | null, now: number): string =>
  due === null
    ? "none due"
    : due <= now
      ? `overdue ${minutesText(now - due)}`
      : `due in ${minutesText(due - now)}`;

/** Only what is late: what is due later is not worth being read again each minute. */
function dueSentence(run: Run): string {
  const late = dueOf(run).filter(({ due }) => due <= run.now);
  return late.length === 0 ? "" : `Due: ${listed(late.map((one) => lateText(one, run.now)))}.`;
}

const lateText = ({ text, due }: Due, now: number): string =>
  `${harmless(text)} since ${minutesText(now - due)}`;

function lastText({ file }: Model): string {
  const last = file.entries.at(-1);
  if (last === undefined) return "No entry yet.";
  const { subject, says } = entryWords(last, file.protocol);
  return `Last entry: number ${last.seq}, ${clockTimeOf(last.at)}, ${subject} ${says}.`;
}
