/** The end of the log: a row an entry, in the order in which they were written. */
import { Box, Text } from "ink";
import { memo } from "react";
import { entryWords } from "../figures/entry-words.ts";
import { clockTimeOf, dayOf, msOf } from "../format/instant.ts";
import { harmless } from "../format/text.ts";
import type { Protocol } from "../protocol/protocol.ts";
import type { Fact } from "../record/standing.ts";
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

const LATE = 60_000;

/** What is remarkable about a row: written late, put right, struck out. Words, so that colour need not say it. */
export function rowMark({ entry, corrections, struck, at }: Fact): string {
  if (struck) return "STRUCK OUT";
  if (corrections.length > 0) return "put right";
  return msOf(entry.loggedAt) - at > LATE ? `written ${clockTimeOf(entry.loggedAt).slice(0, 5)}` : "";
}

type RowProps = {
  readonly fact: Fact;
  readonly protocol: Protocol;
  readonly columns: number;
  readonly picked: boolean;
};

const LogRow = memo(function LogRow({ fact, protocol, columns, picked }: RowProps) {
  const { entry, struck } = fact;
  const { subject, says } = entryWords(entry, protocol);
  const mark = rowMark(fact);
  const number = `#${entry.seq}`.padStart(5);
  const body = entry.note ? `${says} ; ${harmless(entry.note)}` : says;
  const room = columns - 8 - 1 - 5 - 1 - 11 - 1 - (mark ? mark.length + 2 : 0) - 1;
  const otherDay = dayOf(entry.at) !== dayOf(entry.loggedAt) ? "*" : " ";
  return (
    <Text wrap="truncate" inverse={picked} dimColor={struck && !picked} strikethrough={struck}>
      {clockTimeOf(entry.at)}
      {otherDay}
      <Text dimColor={!picked}>{number}</Text> <Text bold>{column(subject, 11)}</Text> {cutTo(body, room)}
      {mark ? <Text color={struck ? "red" : "cyan"}>{`  ${mark}`}</Text> : null}
    </Text>
  );
});
