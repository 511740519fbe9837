/** An audit as sections of tables, for text and for a page alike. */
import { stopwatch } from "../format/duration.ts";
import { fixed, grouped, UNKNOWN } from "../format/number.ts";
import { harmless } from "../format/text.ts";
import { unitText } from "../format/unit.ts";
import { type Audit, type Month, type Rate, type Spread, spreadIn } from "./audit.ts";
import { type Block, lines, pairs, type Section, type Table, table } from "./blocks.ts";
import type { Choice } from "./choose-cases.ts";
import { JUDGED, JUDGED_IDS, MANY_FIGURES, type ManyFigureName } from "./many-words.ts";

/** What is charted by month: middles of two times, and every indicator. */
export const CHARTED: readonly ManyFigureName[] = ["bypassTime", "arrestTime"];

const RULES = [
  "A quartile lies on a straight line between the two nearest values (Hyndman and Fan 1996, definition 7).",
  "An indicator counts as met when every value on bypass was within; without a value it is not assessable, and such a case is in no rate.",
  'A figure that a case lacks is not counted as nought: it stands under "lacking".',
];

/** In the order in which they are read. */
export const auditSections = (audit: Audit, choice: Choice): Section[] => [
  { id: "cases", title: "Cases", blocks: casesBlocks(audit, choice) },
  { id: "figures", title: "Figures", blocks: [figuresTable(audit), knownTable(audit)] },
  { id: "indicators", title: "Indicators", blocks: [indicatorsTable(audit)] },
];

export const rulesSection: Section = { id: "rules", title: "How it was reckoned", blocks: [lines(...RULES)] };

function casesBlocks({ all, closed, open, running, damaged }: Audit, { since, until }: Choice): Block[] {
  return [
    pairs(
      ["from", since ?? "the first case"],
      ["to", until ?? "the last case"],
      ["cases in the figures", String(all.cases)],
      ["closed", String(closed)],
      ["still open", String(open)],
      ["on bypass now, left out", running.length === 0 ? "0" : `${running.length}: ${running.join(", ")}`],
      ["damaged, left out", String(damaged.length)],
    ),
    ...(damaged.length === 0
      ? []
      : [
          table(
            "Damaged cases",
            ["case", "why it is left out"],
            damaged.map(({ id, why }) => [id, harmless(why)]),
            "",
          ),
        ]),
  ];
}

const figuresTable = ({ all }: Audit): Table =>
  table(
    "Over all cases: the median, the quartiles below and above it, and the range",
    ["figure", ">lowest", ">lower", ">median", ">upper", ">highest"],
    all.figures.map((spread) => [
      withUnit(spread.name),
      ...(["lowest", "lower", "median", "upper", "highest"] as const).map((which) => textIn(spread, which)),
    ]),
    "no case",
  );

const knownTable = ({ all }: Audit): Table =>
  table(
    "How many cases have the figure",
    ["figure", ">known", ">lacking"],
    all.figures.map(({ name, known, unknown }) => [withUnit(name), String(known), String(unknown)]),
    "no case",
  );

function withUnit(name: ManyFigureName): string {
  const { label, unit, isClock } = MANY_FIGURES[name];
  const written = isClock ? "h:min:s" : unit === "1" ? "" : unitText(unit);
  return [label, written].filter(Boolean).join(", ");
}

/** A quartile as people read it, without its unit. */
export function textIn({ name, quartiles }: Spread, which: keyof NonNullable<Spread["quartiles"]>): string {
  const { decimals, isClock, unit } = MANY_FIGURES[name];
  const value = quartiles?.[which] ?? null;
  if (value === null) return UNKNOWN;
  if (isClock) return stopwatch(value * 1000);
  return unit === "[IU]" ? grouped(value) : fixed(value, decimals);
}

const indicatorsTable = ({ all }: Audit): Table =>
  table(
    "Over all cases",
    ["indicator", ">met", ">not met", ">not assessable", ">rate"],
    JUDGED_IDS.map((id) => {
      const { met, notMet, notAssessable } = all.rates[id];
      return [JUDGED[id].name, String(met), String(notMet), String(notAssessable), rateText(all.rates[id])];
    }),
    "no case",
  );

const rateText = ({ percent }: Rate): string => (percent === null ? UNKNOWN : `${fixed(percent)} %`);

/** Run charts as tables by month; `bars` draws them beside. */
export const monthTables = ({ months }: Audit, bars: boolean): Table[] => [
  ...CHARTED.map((name) => figureByMonth(name, months, bars)),
  ...JUDGED_IDS.map((id) =>
    table(
      `${JUDGED[id].name}, by month`,
      ["month", ">cases", ">assessed", ">met", ...(bars ? ["share met"] : [])],
      months.map(({ month, cases, rates: { [id]: rate } }) => [
        ...[month, String(cases), String(rate.met + rate.notMet), rateText(rate)],
        ...(bars ? [bar(rate.percent, 100)] : []),
      ]),
      "no case",
    ),
  ),
];

function figureByMonth(name: ManyFigureName, months: readonly Month[], bars: boolean): Table {
  const most = Math.max(1, ...months.map((month) => spreadIn(month, name).quartiles?.median ?? 0));
  return table(
    `${MANY_FIGURES[name].label}, by month`,
    ["month", ">cases", ">known", ">median", ...(bars ? ["median"] : [])],
    months.map((month) => {
      const spread = spreadIn(month, name);
      return [
        ...[month.month, String(month.cases), String(spread.known), textIn(spread, "median")],
        ...(bars ? [bar(spread.quartiles?.median ?? null, most)] : []),
      ];
    }),
    "no case",
  );
}

const BAR = 40;

/** Of nought a dot is drawn, of what is not known nothing. */
function bar(value: number | null, most: number): string {
  if (value === null) return "";
  return "#".repeat(Math.round((BAR * value) / most)) || ".";
}
