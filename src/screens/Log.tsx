/** The end of the log: a row an entry, in the order in which they were written. */
import { Box, Text } from "ink";
import { memo } from "react";
import { entryWords } from "../figures/entry-words.ts";
import { clockTimeOf, dayOf } from "../format/instant.ts";
import { harmless } from "../format/text.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { type Fact, isLate } from "../record/standing.ts";
import { column, cutTo } from "./fit.ts";

type Props = {
  readonly written: readonly Fact[];
  readonly protocol: Protocol;
  readonly rows: number;
  readonly scroll: number;
  readonly columns: number;
  readonly picked?: string | undefined;
};

/** Only the rows that fit are drawn, however long the log is. */
export const Log = memo(function Log({ written, protocol, rows, scroll, columns, picked }: Props) {
  const last = Math.max(Math.min(rows, written.length), endFor(written, rows, scroll, picked));
  const shown = written.slice(Math.max(0, last - rows), last);
  return (
    <Box flexDirection="column" height={rows}>
      {shown.map((fact) => (
        <LogRow
          key={fact.entry.id}
          fact={fact}
          protocol={protocol}
          columns={columns}
          picked={fact.entry.id === picked}
        />
      ))}
    </Box>
  );
});

/** The place after the last row shown: the end of the log, scrolled back, or such that the picked entry is in view. */
function endFor(written: readonly Fact[], rows: number, scroll: number, picked: string | undefined): number {
  const end = written.length - scroll;
  if (picked === undefined) return end;
  const place = written.findIndex(({ entry }) => entry.id === picked) + 1;
  return place <= end - rows || place > end ? Math.min(written.length, place + Math.floor(rows / 2)) : end;
}

/** What is remarkable about a row: written late, put right, struck out. Words, so that colour need not say it. */
export function rowMark(fact: Fact): string {
  const { entry, corrections, struck } = fact;
  if (struck) return "STRUCK OUT";
  if (corrections.length > 0) return "put right";
  return isLate(fact) ? `written ${clockTimeOf(entry.loggedAt).slice(0, 5)}` : "";
}

/** Clock, sign, and the space behind the number. */
const BEFORE_SUBJECT = 10;
/** From here on there is room for the whole name of a drug. */
const WIDE = 100;

/** Beside the clock: the row that is picked, else one of another day than it was written on. */
function signOf({ entry }: Fact, picked: boolean): string {
  if (picked) return "▸";
  return dayOf(entry.at) === dayOf(entry.loggedAt) ? " " : "*";
}

/** What an entry says, with its note. */
function bodyOf({ entry }: Fact, says: string): string {
  return entry.note ? `${says} ; ${harmless(entry.note)}` : says;
}

/** A row as one text, for where there is no room for columns. */
export function rowText(fact: Fact, protocol: Protocol): string {
  const { subject, says } = entryWords(fact.entry, protocol);
  return `${clockTimeOf(fact.entry.at)} #${fact.entry.seq} ${subject} ${bodyOf(fact, says)} ${rowMark(fact)}`.trim();
}

type RowProps = {
  readonly fact: Fact;
  readonly protocol: Protocol;
  readonly columns: number;
  readonly picked: boolean;
};

export const LogRow = memo(function LogRow({ fact, protocol, columns, picked }: RowProps) {
  const { entry, struck } = fact;
  const { subject, says } = entryWords(entry, protocol);
  const mark = rowMark(fact);
  const number = `#${entry.seq}`.padStart(5);
  const wide = columns < WIDE ? 13 : 17;
  const body = bodyOf(fact, says);
  const room = columns - BEFORE_SUBJECT - number.length - wide - 1 - (mark ? mark.length + 2 : 0);
  return (
    <Text wrap="truncate" inverse={picked} dimColor={struck && !picked} strikethrough={struck}>
      {clockTimeOf(entry.at)}
      {signOf(fact, picked)}
      <Text dimColor={!picked}>{number}</Text> <Text bold>{column(subject, wide)}</Text> {cutTo(body, room)}
      {mark ? <Text color={struck ? "red" : "cyan"}>{`  ${mark}`}</Text> : null}
    </Text>
  );
});
