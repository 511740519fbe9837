/** What is due, the most overdue first: one row that is always in view. */
import { Text } from "ink";
import { type Due, dueOf } from "../figures/due.ts";
import type { Run } from "../figures/run.ts";
import { stopwatch } from "../format/duration.ts";
import { harmless } from "../format/text.ts";
import { cutTo, fitting } from "./fit.ts";

type Shown = { readonly text: string; readonly late: boolean };

/** `! ACT overdue 2:10`, `gas in 12:00`. */
export const dueText = ({ text, due }: Due, now: number): Shown =>
  due <= now
    ? { text: `! ${cutTo(harmless(text), 20)} overdue ${stopwatch(now - due)}`, late: true }
    : { text: `${cutTo(harmless(text), 20)} in ${stopwatch(due - now)}`, late: false };

export function DueLine({ run, columns }: { run: Run; columns: number }) {
  const all = dueOf(run).map((due) => dueText(due, run.now));
  if (all.length === 0) return <Text dimColor> due: nothing</Text>;
  const shown = fitting(all, columns - 10, ({ text }) => text.length + 3);
  const more = all.length - shown.length;
  return (
    <Text wrap="truncate">
      <Text dimColor> due: </Text>
      {shown.map(({ text, late }, place) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two things due may read alike; only their place tells them apart.
        <Text key={place} bold={late} {...(late ? { color: "yellow" } : {})}>
          {`${place === 0 ? "" : " · "}${text}`}
        </Text>
      ))}
      {more > 0 ? <Text dimColor>{` +${more}`}</Text> : null}
    </Text>
  );
}
