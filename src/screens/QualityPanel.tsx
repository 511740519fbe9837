/** The quality indicators as they stand; where nothing was recorded they say so, and that is never a pass. */
import { figureText } from "../figures/figure.ts";
import { indicatorsOf } from "../figures/indicators.ts";
import { column } from "./fit.ts";
import { type PanelProps, PanelRows } from "./PanelRows.tsx";
import { wrapped } from "./wrapped.ts";

const NAME = 33;
const VERDICT = 15;
const VALUE = 14;

export function QualityPanel({ run, columns, rows, scroll }: PanelProps) {
  const room = Math.max(10, columns - NAME - VERDICT - VALUE - 5);
  const lines = indicatorsOf(run).flatMap(({ name, verdict, value }) =>
    wrapped(value.working, room).map((working, place) =>
      place === 0
        ? `${column(name, NAME)} ${column(verdict, VERDICT)} ${column(figureText(value, decimalsFor(value.value)), VALUE)} ${working}`
        : " ".repeat(NAME + VERDICT + VALUE + 3) + working,
    ),
  );
  return <PanelRows rows={rows} scroll={scroll} lines={lines} />;
}

const decimalsFor = (value: number | null): number => (value !== null && !Number.isInteger(value) ? 1 : 0);
