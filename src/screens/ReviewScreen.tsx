/** The review screen: totals first, then the log as it was written. Nothing here can change the case. */
import { Box, Text } from "ink";
import type { Review } from "../console/review.ts";
import { readRun } from "../figures/run.ts";
import type { Instant } from "../format/instant.ts";
import { msOf } from "../format/instant.ts";
import { harmless } from "../format/text.ts";
import { Balances } from "./Balances.tsx";
import { column } from "./fit.ts";
import { Log, rowText } from "./Log.tsx";
import { PlainRows } from "./PlainRows.tsx";
import { PlanLine } from "./PlanLine.tsx";
import { Rule } from "./Rule.tsx";
import { tileRows } from "./SmallScreen.tsx";
import { drawnRows, roomFor, type Size } from "./size.ts";
import { Timers } from "./Timers.tsx";

/** Title, plan, three of timers, three of balances, rule. */
const ROWS_TAKEN = 9;

export function ReviewScreen({ review, now, size }: { review: Review; now: Instant; size: Size }) {
  const { columns } = size;
  const rows = drawnRows(size);
  const { file, scroll, others } = review;
  const last = file.entries.at(-1);
  // A case is looked at as it stood when the last entry was written, so that an open one does not run on.
  const run = readRun(file, last ? msOf(last.loggedAt) : now.ms);
  const { written } = run.course.record;
  const logRows = Math.max(1, rows - ROWS_TAKEN);
  const back = Math.max(0, written.length - logRows - scroll);
  const place =
    others.length > 1 ? ` · case ${others.indexOf(file) + 1} of ${others.length}, ← → another` : "";
  const title = `REVIEW · ${harmless(file.label)}${place} · arrows scroll · Esc leaves`;
  if (roomFor(size) === "small") {
    const list = written.slice(scroll, scroll + rows).map((fact) => rowText(fact, file.protocol));
    return <PlainRows lines={[title, ...tileRows(run)]} list={list} size={size} />;
  }
  return (
    <Box flexDirection="column" height={rows} width={columns}>
      <Text inverse>{column(` ${title}`, columns)}</Text>
      <PlanLine course={run.course} columns={columns} />
      <Timers run={run} columns={columns} big={false} />
      <Balances run={run} columns={columns} />
      <Rule title={`log · ${written.length} entries`} columns={columns} />
      <Log written={written} protocol={file.protocol} rows={logRows} scroll={back} columns={columns} />
    </Box>
  );
}
