/** An audit as one page that needs nothing else, with a run chart for each indicator. */
import { stopwatch } from "../format/duration.ts";
import { fixed } from "../format/number.ts";
import { type Audit, type Month, spreadIn } from "./audit.ts";
import { auditSections, CHARTED, monthTables, rulesSection } from "./audit-sections.ts";
import type { Choice } from "./choose-cases.ts";
import { sectionMarkup, tableMarkup } from "./html-blocks.ts";
import { pageText } from "./html-page.ts";
import { html, type Markup } from "./html-parts.ts";
import { JUDGED, JUDGED_IDS, MANY_FIGURES } from "./many-words.ts";
import { type MonthValue, runChart } from "./svg-months.ts";

/** The audit as one page that needs nothing from elsewhere; `choice` is what was asked for. */
export function auditHtml(audit: Audit, choice: Choice): string {
  const sections = auditSections(audit, choice);
  const charts = { id: "months", title: "Month by month" };
  return pageText({
    title: "Audit of bypass runs",
    lead: `${audit.all.cases} cases, ${choice.since ?? "from the first"} to ${choice.until ?? "the last"}`,
    foot: "audit of bypass runs",
    contents: [...sections, charts, rulesSection],
    main: [
      ...sections.map(sectionMarkup),
      html`<section id="${charts.id}"><h2>${charts.title}</h2><p>The broken line is the value over all cases.</p>${chartsOf(audit)}</section>`,
      sectionMarkup(rulesSection),
    ],
  });
}

/** Each chart with its table, which says the same in numbers. */
function chartsOf(audit: Audit): Markup[] {
  const tables = monthTables(audit, false);
  return charted(audit).map((chart, i) => runChart(chart, html`${tables.slice(i, i + 1).map(tableMarkup)}`));
}

/** In the order of the tables by month. */
function charted({ all, months }: Audit) {
  const valuesOf = (value: (month: Month) => number | null): MonthValue[] =>
    months.map((month) => ({ month: month.month, value: value(month) }));
  const says = (what: string) => `${what}, month by month; the table below has the same numbers`;
  return [
    ...CHARTED.map((name) => {
      const values = valuesOf((month) => spreadIn(month, name).quartiles?.median ?? null);
      const title = `${MANY_FIGURES[name].label}: median`;
      return {
        ...{ id: `chart-${name}`, title, says: says(title), values },
        middle: spreadIn(all, name).quartiles?.median ?? null,
        most: Math.max(1, ...values.map(({ value }) => value ?? 0)),
        text: (seconds: number) => stopwatch(seconds * 1000),
      };
    }),
    ...JUDGED_IDS.map((id) => {
      const title = `${JUDGED[id].name}: share of the cases assessed that met it`;
      return {
        ...{ id: `chart-${id}`, title, says: says(title) },
        values: valuesOf(({ rates }) => rates[id].percent),
        ...{ middle: all.rates[id].percent, most: 100 },
        text: (percent: number) => `${fixed(percent)} %`,
      };
    }),
  ];
}
