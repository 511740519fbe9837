/** The charts of the page, each with the same in words and numbers beside it. */

import type { Course } from "../figures/run.ts";
import { isMeasured, STEERED_BY, type Trend, type TrendLine, trendsOf, wholeRun } from "../figures/trends.ts";
import { lookUp } from "../format/look-up.ts";
import { fixed } from "../format/number.ts";
import { listed } from "../format/text.ts";
import { spanName } from "../protocol/names.ts";
import { table } from "./blocks.ts";
import { tableMarkup } from "./html-blocks.ts";
import { html, type Markup } from "./html-parts.ts";
import { clockOf, type Report } from "./report.ts";
import { drawnLines, titleOf, trendChart } from "./svg-chart.ts";
import { courseChart, inOrder } from "./svg-course.ts";
import { type Frame, frameOf } from "./svg-frame.ts";

/** What is drawn besides the trends that a run is steered by. */
const ALSO: readonly string[] = ["haematocrit", "venous saturation", "cerebral saturation", "ACT"];

/** Names in full, where the screen has room for a short one only. */
const IN_FULL: Readonly<Record<string, string>> = {
  flow: "pump flow",
  MAP: "mean arterial pressure",
  temperature: "temperatures",
  DO2i: "oxygen delivery index (DO2i)",
};

const drawnTrends = (course: Course): Trend[] => {
  const trends = trendsOf(course);
  const also = ALSO.flatMap((title) => trends.filter((trend) => trend.title === title && isMeasured(trend)));
  return [...trends.slice(0, STEERED_BY), ...also].map((trend) => ({
    ...trend,
    title: lookUp(IN_FULL, trend.title) ?? trend.title,
  }));
};

/** The course of the run and every trend that was measured, each with its numbers beside it. */
export function chartsMarkup(report: Report): Markup {
  const { course, now } = report.run;
  const frame = frameOf(wholeRun(course, now), course.spans, now, report.at.offset);
  const between = `from ${clockOf(report, frame.axis.from)} to ${clockOf(report, frame.axis.to)}`;
  return html`<section id="charts"><h2>The run in pictures</h2><p>All charts share one time axis, ${between}. Behind them the time on bypass is shaded, that under the clamp darker. A dotted line bridges a gap in which no reading is relied on. Doses too close for a number each share one, their sum.</p>${courseFigure(report, frame)}${drawnTrends(
    course,
  ).map((trend, i) => trendFigure(report, frame, trend, i))}</section>`;
}

function courseFigure(report: Report, frame: Frame): Markup {
  const { spans, doses } = report.run.course;
  const stretches = inOrder(spans).map(([what, intervals]) => {
    const each = intervals.map(
      ({ from, to }) => `${clockOf(report, from)} to ${to === null ? "now" : clockOf(report, to)}`,
    );
    return `${spanName(what, report.file.protocol)}: ${listed(each)}`;
  });
  const given = doses.map(({ start, ml }) => `${clockOf(report, start)} ${ml ?? "?"} mL`);
  const says = [
    ...stretches,
    given.length > 0 ? `doses of arrest solution: ${listed(given)}` : "no dose of arrest solution",
  ];
  return html`<figure><figcaption>Course of the run</figcaption>${courseChart("course", report, frame, "The same is told in words below.")}<ul class="beside">${says.map((one) => html`<li>${one}</li>`)}</ul></figure>`;
}

function trendFigure(report: Report, frame: Frame, trend: Trend, i: number): Markup {
  const lines = drawnLines(trend, frame);
  const title = titleOf(trend);
  if (lines.length === 0)
    return html`<figure><figcaption>${title}</figcaption><p class="beside">Nothing was measured.</p></figure>`;
  const limits = trend.limits.map((limit) => fixed(limit, Number.isInteger(limit) ? 0 : trend.decimals));
  const says = `${title}: ${listed(lines.map(({ name }) => name))}${limits.length > 0 ? `; limit ${listed(limits)}` : ""}. The numbers are in the table below.`;
  const rows = lines.map((line) => lineCells(report, trend, line));
  const columns = ["Line", ">First", ">Lowest", ">At", ">Highest", ">At", ">Last", ">Values"];
  const numbers = tableMarkup(table(`${title}, in numbers`, columns, rows, ""));
  return html`<figure><figcaption>${title}</figcaption>${trendChart(`chart-${i}`, trend, frame, says)}<div class="beside">${numbers}</div></figure>`;
}

function lineCells(report: Report, { decimals }: Trend, { name, points }: TrendLine): string[] {
  const [first] = points;
  if (!first) return [name];
  const lowest = points.reduce((low, one) => (one.value < low.value ? one : low), first);
  const highest = points.reduce((high, one) => (one.value > high.value ? one : high), first);
  const write = ({ value }: { value: number }) => fixed(value, decimals);
  const last = points.at(-1) ?? first;
  return [
    name,
    write(first),
    write(lowest),
    clockOf(report, lowest.at),
    write(highest),
    clockOf(report, highest.at),
    write(last),
    String(points.length),
  ];
}
