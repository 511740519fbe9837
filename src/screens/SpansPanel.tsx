/** Every interval of every span, with its times and how long it lasted. */

import { type Interval, lasted } from "../figures/spans.ts";
import { stopwatch } from "../format/duration.ts";
import { clockTime, clockTimeOf } from "../format/instant.ts";
import { spanName } from "../protocol/names.ts";
import { column, cutTo } from "./fit.ts";
import { type PanelProps, PanelRows } from "./PanelRows.tsx";

export function SpansPanel({ run, columns, rows, scroll, offset }: PanelProps) {
  const { spans, protocol } = run.course;
  const line = (interval: Interval) => {
    const name = `${spanName(interval.what, protocol)}${interval.way ? ` (${interval.way})` : ""}`;
    const length = stopwatch(lasted(interval, run.now)).padStart(8);
    return `${column(name, 36)} ${clockTimeOf(interval.on.entry.at)} – ${endText(interval, offset)} ${length}`;
  };
  const lines = [...spans.values()].flat().map((interval) => cutTo(line(interval), columns - 1));
  return (
    <PanelRows
      rows={rows}
      scroll={scroll}
      lines={lines.length === 0 ? ["No span has been on yet."] : lines}
    />
  );
}

/** The end as the wall clock stood; an interval that is on has none. */
const endText = ({ to }: Interval, offset: number): string =>
  to === null ? "on      " : clockTime({ ms: to, offset });
