// The speeds, each against a yardstick measured in the same run: `npm run bench`. No test: a busy machine is no fault.

import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { bundle, isStale } from "../../.ci/bundle.js";
import { writeCase } from "./cases.ts";
import { idleOfOthers, inUse } from "./in-use.ts";
import { startMeasures } from "./start.ts";
import { type Measure, tableOf } from "./table.ts";

if (await isStale()) await bundle();
const folder = await mkdtemp(join(tmpdir(), "pumpside-bench-"));
try {
  const small = await writeCase(folder, 100);
  const start = await startMeasures(folder, small);
  const usual = await writeCase(folder, 2000);
  const long = await writeCase(folder, 10_000);
  const few = await inUse(small);
  const many = await inUse(usual, { idles: true });
  const most = await inUse(long);
  const others = await idleOfOthers();
  const measures: Measure[] = [
    ...start,
    { what: "key to paint p50, 2,000 entries", ours: many.key.p50, unit: "ms", atMost: null },
    { what: "key to paint p99, 2,000 entries", ours: many.key.p99, unit: "ms", atMost: { value: 20 } },
    {
      what: "key to paint p50, 10,000 entries",
      ours: most.key.p50,
      unit: "ms",
      yardstick: { name: "100 entries", value: few.key.p50 },
      atMost: { times: 2 },
    },
    {
      what: "Enter to saved p99, 2,000 entries",
      ours: many.saved,
      unit: "ms",
      yardstick: { name: "bare write, fsync, rename", value: many.bareWrite },
      atMost: { times: 2 },
    },
    { what: "bytes a tick", ours: many.tickBytes, unit: "bytes", atMost: { value: 400 } },
    {
      what: "idle work of a core",
      ours: many.idlePercent,
      unit: "%",
      ...(others ? { yardstick: others } : {}),
      atMost: { value: 1 },
    },
    { what: "memory, 2,000 entries", ours: many.memory, unit: "MB", atMost: { value: 120 } },
    { what: "memory after 40 entries more", ours: many.grown, unit: "MB", atMost: { value: 10 } },
  ];
  process.stdout.write(`${tableOf(measures)}\n`);
} finally {
  await rm(folder, { recursive: true, force: true });
}
