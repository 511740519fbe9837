/** An audit as one tidy table: a row a figure or an indicator, over all cases and by month. */
import type { Audit, Group, Spread } from "./audit.ts";
import { type Cell, csvText } from "./csv.ts";
import { JUDGED, JUDGED_IDS, MANY_FIGURES } from "./many-words.ts";

const COLUMNS = [
  ...[
    "month",
    "what",
    "name",
    "words",
    "unit (UCUM)",
    "cases",
    "known or assessed",
    "lacking or not assessable",
  ],
  ...["lowest", "lower quartile", "median", "upper quartile", "highest", "met", "not met", "rate (%)"],
];

/** An empty month stands for all cases; times are in seconds. Damaged and running cases have a row each. */
export const auditCsv = ({ all, months, damaged, running }: Audit): string =>
  csvText({
    name: "audit",
    columns: COLUMNS,
    rows: [
      ...groupRows(null, all),
      ...months.flatMap((month) => groupRows(month.month, month)),
      ...damaged.map(({ id, why }) => leftOut("damaged", id, why)),
      ...running.map((id) => leftOut("running", id, "on bypass still")),
    ],
  });

const leftOut = (what: string, id: string, why: string): Cell[] => [
  ...[null, what, id, why],
  ...new Array<Cell>(COLUMNS.length - 4).fill(null),
];

const groupRows = (month: string | null, group: Group): Cell[][] => [
  ...group.figures.map((spread) => figureRow(month, group, spread)),
  ...JUDGED_IDS.map((id) => {
    const { met, notMet, notAssessable, percent } = group.rates[id];
    return [
      ...[month, "indicator", id, JUDGED[id].name, "%", group.cases, met + notMet, notAssessable],
      ...[null, null, null, null, null, met, notMet, percent],
    ];
  }),
];

function figureRow(
  month: string | null,
  { cases }: Group,
  { name, known, unknown, quartiles }: Spread,
): Cell[] {
  const { label, unit } = MANY_FIGURES[name];
  const { lowest = null, lower = null, median = null, upper = null, highest = null } = quartiles ?? {};
  return [
    ...[month, "figure", name, label, unit, cases, known, unknown],
    ...[lowest, lower, median, upper, highest, null, null, null],
  ];
}
