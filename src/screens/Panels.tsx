/** The panels that Tab turns over: the log, the working of the balances, the spans. */
import { Box, Text } from "ink";
import { spanName } from "../figures/entry-words.ts";
import { type Figure, figureText } from "../figures/figure.ts";
import type { Run } from "../figures/run.ts";
import { type Interval, lasted } from "../figures/spans.ts";
import { stopwatch } from "../format/duration.ts";
import { clockTime, clockTimeOf } from "../format/instant.ts";
import { column, cutTo } from "./fit.ts";
import { wrapped } from "./wrapped.ts";

type Props = {
  readonly run: Run;
  readonly columns: number;
  readonly rows: number;
  readonly scroll: number;
  readonly offset: number;
};

export function BalancesPanel({ run, columns, rows, scroll }: Props) {
  const { balances } = run.course;
  const { coagulation } = run;
  const lines: readonly (readonly [string, Figure])[] = [
    ["arrest solution", balances.arrestGiven],
    ["of it crystalloid", balances.arrestCrystalloid],
    ["fluid in", balances.fluidIn],
    ["out", balances.out],
    ["net", balances.net],
    ["returned", balances.returned],
    ["left in the pump", run.pump.left],
    ["net to the patient", run.netToPatient],
    ["heparin", coagulation.heparinTotal],
    ["heparin per kg", coagulation.heparinPerKg],
    ["protamine, first basis", coagulation.protamineOnFirst],
    ["protamine, total basis", coagulation.protamineOnTotal],
    ["protamine given", coagulation.protamineGiven],
    ["full flow", run.course.fullFlow],
  ];
  return (
    <Rows
      rows={rows}
      scroll={scroll}
      lines={lines.flatMap(([label, figure]) => {
        const value = figureText(figure, figure.unit === "L/min" ? 2 : 0);
        return wrapped(figure.working, columns - 41).map((working, place) =>
          place === 0 ? `${column(label, 23)} ${column(value, 14)} ${working}` : " ".repeat(39) + working,
        );
      })}
    />
  );
}

/** Every interval of every span, with its times and how long it lasted. */
export function SpansPanel({ run, columns, rows, scroll, offset }: Props) {
  const { spans, protocol } = run.course;
  const line = (interval: Interval) => {
    const name = `${spanName(interval.what, protocol)}${interval.way ? ` (${interval.way})` : ""}`;
    const length = stopwatch(lasted(interval, run.now)).padStart(8);
    return `${column(name, 36)} ${clockTimeOf(interval.on.entry.at)} – ${endText(interval, offset)} ${length}`;
  };
  const lines = [...spans.values()].flat().map((interval) => cutTo(line(interval), columns - 1));
  return (
    <Rows rows={rows} scroll={scroll} lines={lines.length === 0 ? ["No span has been on yet."] : lines} />
  );
}

/** The end as the wall clock stood; an interval that is on has none. */
const endText = ({ to }: Interval, offset: number): string =>
  to === null ? "on      " : clockTime({ ms: to, offset });

function Rows({ lines, rows, scroll }: { lines: readonly string[]; rows: number; scroll: number }) {
  const first = Math.min(scroll, Math.max(0, lines.length - rows));
  return (
    <Box flexDirection="column" height={rows}>
      {lines.slice(first, first + rows).map((line, place) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows of a scrolled text have no name but their place.
        <Text key={first + place} wrap="truncate">{` ${line}`}</Text>
      ))}
    </Box>
  );
}
