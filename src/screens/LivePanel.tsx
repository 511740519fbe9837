/** What follows from the latest readings and the clock: oxygen, resistance, temperatures, time below, ischaemia. */
import { ROUTE_NAMES } from "../figures/entry-words.ts";
import { type Figure, figureText, known } from "../figures/figure.ts";
import { liveFigures } from "../figures/live-figures.ts";
import type { Run } from "../figures/run.ts";
import { column } from "./fit.ts";
import { figureLines, type Named, type PanelProps, PanelRows } from "./PanelRows.tsx";

/** Seconds of a long clock in minutes. */
const inMinutes = (figure: Figure): Figure =>
  figure.value === null
    ? { ...figure, unit: "min" }
    : known(Math.floor(figure.value / 60), "min", figure.working);

function liveOf(run: Run): readonly Named[] {
  const live = liveFigures(run);
  const threshold = run.course.protocol.watch.oxygenDelivery.value;
  return [
    ["flow index", live.flowIndex, 2],
    ["DO2i", live.delivery],
    ["VO2i", live.uptake],
    ["O2ER", live.extraction, 1],
    ["SVR", live.resistance],
    ["gradient", live.gradient.figure, 1],
    ["warming rate", live.warmingRate, 2],
    ["to the target", live.minutesToTarget],
    [`DO2i below ${threshold}`, live.deliveryBelowMinutes],
    ["area below", live.deliveryBelowArea],
    ["lowest DO2i", live.deliveryLowest],
    ["last heparin", inMinutes(live.heparinAge)],
    ["urine", live.urineRate, 2],
    ...live.ischaemia.map(
      ({ route, since }): Named => [
        route ? `since ${ROUTE_NAMES[route]}` : "since any dose",
        inMinutes(since),
      ],
    ),
  ];
}

const CELL = 38;

/** Values alone, side by side, as many columns as fit. */
function compactLines(figures: readonly Named[], columns: number): string[] {
  const across = Math.max(1, Math.floor((columns - 1) / CELL));
  const down = Math.ceil(figures.length / across);
  const cell = ([name, figure, decimals]: Named) =>
    `${column(name, 20)} ${column(figureText(figure, decimals), CELL - 22)} `;
  return Array.from({ length: down }, (_, row) =>
    figures
      .filter((_figure, place) => place % down === row)
      .map(cell)
      .join(""),
  );
}

/** With the working where there is room for all of it, else the values alone; the report carries the working too. */
export function LivePanel({ run, columns, rows, scroll }: PanelProps) {
  const figures = liveOf(run);
  const worked = figureLines(figures, columns);
  return (
    <PanelRows
      rows={rows}
      scroll={scroll}
      lines={worked.length <= rows ? worked : compactLines(figures, columns)}
    />
  );
}
