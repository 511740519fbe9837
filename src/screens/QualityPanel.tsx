/** The quality indicators as they stand; where nothing was recorded they say so, and that is never a pass. */
import { figureText } from "../figures/figure.ts";
import { indicatorsOf } from "../figures/indicators.ts";
import { column } from "./fit.ts";
import { type PanelProps, PanelRows } from "./PanelRows.tsx";
import { wrapped } from "./wrapped.ts";

const NAME = 36;
const VERDICT = 15;
const VALUE = 14;

/** From this width on the working stands beside the verdict. */
const WIDE = 110;

export function QualityPanel({ run, columns, rows, scroll }: PanelProps) {
  const room = columns - NAME - VERDICT - VALUE - 5;
  const lines = indicatorsOf(run).flatMap(({ name, verdict, value }) => {
    const head = `${column(name, NAME)} ${column(verdict, VERDICT)} ${figureText(value, decimalsFor(value.value))}`;
    if (columns < WIDE) return [head];
    const [first, ...rest] = wrapped(value.working, room);
    return [
      `${column(head, NAME + VERDICT + VALUE + 2)} ${first}`,
      ...rest.map((more) => " ".repeat(columns - room - 2) + more),
    ];
  });
  return <PanelRows rows={rows} scroll={scroll} lines={lines} />;
}

const decimalsFor = (value: number | null): number => (value !== null && !Number.isInteger(value) ? 1 : 0);
