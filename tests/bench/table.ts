// One row a measure: what it took, against its yardstick from the same run, and what it has to reach.

export type Measure = {
  readonly what: string;
  readonly ours: number;
  readonly unit: "ms" | "bytes" | "%" | "MB" | "kB";
  /** The general thing it is compared with. */
  readonly yardstick?: { readonly name: string; readonly value: number };
  /** At most this many times the yardstick, or at most this many units. */
  readonly atMost: { readonly times: number } | { readonly value: number } | null;
};

const shown = (value: number): string => (value < 10 ? value.toFixed(2) : value.toFixed(value < 100 ? 1 : 0));

const ratioOf = ({ ours, yardstick }: Measure): number | null => (yardstick ? ours / yardstick.value : null);

function verdict(measure: Measure): string {
  const { atMost, ours } = measure;
  if (atMost === null) return "";
  const ratio = ratioOf(measure);
  const reached =
    "times" in atMost ? (ratio ?? Number.POSITIVE_INFINITY) <= atMost.times : ours <= atMost.value;
  const limit = "times" in atMost ? `${atMost.times}×` : `${atMost.value} ${measure.unit}`;
  return `${reached ? "reached" : "NOT REACHED"} (at most ${limit})`;
}

/** The measures as a table of text. */
export function tableOf(measures: readonly Measure[]): string {
  const rows = measures.map((measure) => {
    const { what, ours, unit, yardstick } = measure;
    const ratio = ratioOf(measure);
    return [
      what,
      `${shown(ours)} ${unit}`,
      yardstick ? `${yardstick.name}: ${shown(yardstick.value)} ${unit}` : "",
      ratio === null ? "" : `${ratio.toFixed(2)}×`,
      verdict(measure),
    ];
  });
  const all = [["measure", "ours", "yardstick", "ratio", "has to reach"], ...rows];
  const widths = [0, 1, 2, 3, 4].map((place) => Math.max(...all.map((row) => row[place]?.length ?? 0)));
  return all
    .map((row) =>
      row
        .map((cell, place) => cell.padEnd(widths[place] ?? 0))
        .join("  ")
        .trimEnd(),
    )
    .join("\n");
}

/** The value below which `part` of the values lie. */
export function quantile(values: readonly number[], part: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? Number.NaN;
}

export const median = (values: readonly number[]): number => quantile(values, 0.5);

export type Times = { readonly p50: number; readonly p99: number };

export const timesOf = (values: readonly number[]): Times => ({
  p50: quantile(values, 0.5),
  p99: quantile(values, 0.99),
});
