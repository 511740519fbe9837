/** The course of the run as bars on the shared time axis: every span a lane, the doses, heparin and protamine. */

import { IN_PRIME } from "../figures/coagulation.ts";
import type { Interval, Spans } from "../figures/spans.ts";
import { plain } from "../format/number.ts";
import { spanName } from "../protocol/names.ts";
import { ofKind } from "../record/standing.ts";
import { html, type Markup } from "./html-parts.ts";
import type { Report } from "./report.ts";
import { CHART, drawing, type Frame, hours, place } from "./svg-frame.ts";

const LANE = 18;
const BAR = 11;

type Bar = {
  readonly from: number;
  readonly to: number | null;
  readonly sort: string;
  /** Of a dose: `null` while nobody has said how much. */
  readonly ml?: number | null;
};
type Lane = { readonly name: string; readonly bars: readonly Bar[] };

/** `id` names it on the page; `says` tells in words what it shows. */
export function courseChart(id: string, report: Report, frame: Frame, says: string): Markup {
  const lanes = [...spanLanes(report), ...givenLanes(report)].filter(({ bars }) => bars.length > 0);
  const bottom = CHART.top + lanes.length * LANE;
  const inside = html`${hours(frame, CHART.top, bottom)}${lanes.map((lane, i) => drawnLane(lane, CHART.top + i * LANE, frame))}`;
  return drawing(id, "Course of the run", says, bottom + CHART.below, inside);
}

const FIRST = ["bypass", "clamp", "circulatory-arrest", "cerebral-perfusion"];

/** The spans, those that make the run before the others. */
export function inOrder(spans: Spans): [string, readonly Interval[]][] {
  const rank = (what: string) => (FIRST.includes(what) ? FIRST.indexOf(what) : FIRST.length);
  return [...spans].sort(([a], [b]) => rank(a) - rank(b));
}

const spanLanes = ({ run, file }: Report): Lane[] =>
  inOrder(run.course.spans).map(([what, intervals]) => ({
    name: spanName(what, file.protocol),
    bars: intervals.map(({ from, to }) => ({
      from,
      to,
      sort: FIRST.includes(what) ? what : "other",
    })),
  }));

function givenLanes({ run }: Report): Lane[] {
  const { doses, record } = run.course;
  const drugs = (name: string): Bar[] =>
    ofKind(record.facts, "drug")
      .filter(({ entry }) => entry.name === name && entry.route !== IN_PRIME)
      .map(({ at }) => ({ from: at, to: at, sort: "drug" }));
  return [
    {
      name: "arrest doses (mL)",
      bars: doses.map(({ start, end, ml }) => ({
        from: start,
        to: end,
        ml,
        sort: "dose",
      })),
    },
    { name: "heparin", bars: drugs("heparin") },
    { name: "protamine", bars: drugs("protamine") },
  ];
}

/** A name on the left, and a bar for each stretch; what has no length is as wide as can be seen. */
function drawnLane({ name, bars }: Lane, top: number, { axis, now }: Frame): Markup {
  const placed = bars.map(({ from, to, ml, sort }) => {
    const x = axis.at(from);
    return { x, end: Math.max(x + 3, axis.at(to ?? now)), ml, sort };
  });
  const drawn = placed.map(
    ({ x, end, sort }) =>
      html`<rect class="bar-${sort}" x="${place(x)}" y="${top + 3}" width="${place(end - x)}" height="${BAR}"/>`,
  );
  const labels = labelled(placed.flatMap(({ x, end, ml }) => (ml === undefined ? [] : [{ x, end, ml }]))).map(
    ({ end, text }) => html`<text class="mark" x="${place(end + 3)}" y="${top + 13}">${text}</text>`,
  );
  return html`<text x="${CHART.left - 6}" y="${top + 13}" text-anchor="end">${shortened(name)}</text>${drawn}${labels}`;
}

type Placed = { readonly x: number; readonly end: number; readonly ml: number | null };
type Label = { readonly end: number; readonly text: string };

/** One label behind doses that stand too close for one each: their sum. */
function labelled(bars: readonly Placed[]): Label[] {
  const labels: Label[] = [];
  let sum: number | null = null;
  for (const { x, end, ml } of bars) {
    const before = labels.at(-1);
    const isClose = before !== undefined && x < before.end + 6 + before.text.length * 6;
    sum = isClose && sum !== null ? sum + (ml ?? 0) : ml;
    const label = { end, text: sum === null ? "?" : plain(sum) };
    if (isClose) labels[labels.length - 1] = label;
    else labels.push(label);
  }
  return labels;
}

/** What fits beside the plot; the whole name stands in the table below. */
const shortened = (name: string): string => (name.length > 17 ? `${name.slice(0, 16)}…` : name);
