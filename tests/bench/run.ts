// The speeds, each against a yardstick measured in the same run: `npm run bench`. No test: a busy machine is no fault.

import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "rolldown";
import { bundle, isStale, settings } from "../../.ci/bundle.js";
import { withoutDevtools } from "../../.ci/lighten.js";
import { writeCase } from "./cases.ts";
import { type InUse, idleInk, idleOfOthers, inUse } from "./in-use.ts";
import { longStartMeasures, startMeasures } from "./start.ts";
import { savesOf } from "./store.ts";
import { type Measure, type Times, tableOf } from "./table.ts";

type Sized = InUse & {
  readonly size: string;
  readonly onDisk: { readonly saved: Times; readonly bare: Times };
};

/** What a key takes at each size: at the usual one the slowest, at the longest against the smallest. */
function keyMeasures(
  what: string,
  timesOf: (used: InUse) => Times,
  all: readonly Sized[],
  { p99, most: atMost }: { readonly p99: number; readonly most: { readonly times: number } | null },
) {
  const [few, many, most] = all;
  if (!few || !many || !most) throw new Error("three sizes are compared");
  const against = (part: keyof Times) => ({ name: few.size, value: timesOf(few)[part] });
  return [
    { what: `${what} p50, ${many.size}`, ours: timesOf(many).p50, yardstick: against("p50"), atMost: null },
    {
      what: `${what} p99, ${many.size}`,
      ours: timesOf(many).p99,
      yardstick: against("p99"),
      atMost: { value: p99 },
    },
    {
      what: `${what} p50, ${most.size}`,
      ours: timesOf(most).p50,
      yardstick: against("p50"),
      atMost,
    },
    { what: `${what} p99, ${most.size}`, ours: timesOf(most).p99, yardstick: against("p99"), atMost: null },
  ].map((one): Measure => ({ ...one, unit: "ms" }));
}

/** To the disk, and to the word for it on the screen, each against bare writes made between those saves. */
const savedAgainstBare = ({ size, saved, bareWrite, onDisk }: Sized): Measure[] =>
  (
    [
      ["Enter to saved", onDisk.saved, onDisk.bare, { times: 2 }],
      ["Enter to saved on the screen", saved, bareWrite, null],
    ] as const
  ).flatMap(([what, ours, bare, atMost]) =>
    (["p50", "p99"] as const).map(
      (part): Measure => ({
        what: `${what} ${part}, ${size}`,
        ours: ours[part],
        unit: "ms",
        yardstick: { name: "bare write, fsync, rename", value: bare[part] },
        atMost: part === "p99" ? atMost : null,
      }),
    ),
  );

if (await isStale()) await bundle();
const folder = await mkdtemp(join(tmpdir(), "pumpside-bench-"));
try {
  const hello = join(folder, "hello.mjs");
  await bundle({ input: "tests/bench/hello.tsx", file: hello, ways: { screen: [[]] } });
  // As its packages come, with nothing taken out of them and nothing compiled ahead.
  const plain = join(folder, "plain-hello.mjs");
  await build({
    ...settings,
    input: "tests/bench/hello.tsx",
    plugins: [withoutDevtools],
    output: { ...settings.output, file: plain, format: "esm", codeSplitting: false },
  });
  const small = await writeCase(folder, 100);
  const start = await startMeasures({ folder, small }, { plain, light: hello });
  const cases = [
    ["100 entries", small, 100],
    ["2,000 entries", await writeCase(folder, 2000), 2000],
    ["10,000 entries", await writeCase(folder, 10_000), 10_000],
  ] as const;
  const long = await longStartMeasures(cases.map(([size, path]) => [size, path]));
  const all: Sized[] = [];
  for (const [size, path, count] of cases)
    all.push({ size, ...(await inUse(path, count)), onDisk: await savesOf(folder, path) });
  const ink = await idleInk(hello);
  const others = await idleOfOthers();
  const clock = (value: number) => ({ name: "bare Ink clock", value });
  const measures: Measure[] = [
    ...start,
    ...long,
    ...keyMeasures("key to paint", ({ key }) => key, all, { p99: 20, most: { times: 2 } }),
    ...keyMeasures("the same with live figures", ({ live }) => live, all, { p99: 20, most: { times: 2 } }),
    // A longer case is more bytes to force to the disk, which the bare write tells.
    ...keyMeasures("Enter to saved on the screen", ({ saved }) => saved, all, { p99: 50, most: null }),
    ...all.flatMap(savedAgainstBare),
    ...all.flatMap(({ size, idle, memory, grown }): Measure[] => [
      {
        what: `bytes a tick, ${size}`,
        ours: idle.bytes,
        unit: "bytes",
        yardstick: clock(ink.bytes),
        atMost: { value: 400 },
      },
      {
        what: `idle work of a core, ${size}`,
        ours: idle.percent,
        unit: "%",
        yardstick: clock(ink.percent),
        atMost: { value: 1 },
      },
      { what: `memory, ${size}`, ours: memory, unit: "MB", atMost: { value: 120 } },
      { what: `memory after 60 entries more, ${size}`, ours: grown, unit: "MB", atMost: { value: 120 } },
    ]),
    ...(others ? [{ what: others.name, ours: others.idle.percent, unit: "%", atMost: null } as const] : []),
  ];
  process.stdout.write(`${tableOf(measures)}\n`);
} finally {
  await rm(folder, { recursive: true, force: true });
}
