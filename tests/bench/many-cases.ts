// Many cases: listing, auditing, exporting and querying them, and one long case read back: `npm run bench:many`. No test.

import { spawnSync } from "node:child_process";
import { mkdtemp, readdir, readFile, rm, stat } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { bundle, bundlePath, isStale } from "../../.ci/bundle.js";
import { indexOf } from "../../src/store/case-index.ts";
import { asked } from "../helpers/duckdb.ts";
import { writeMany } from "../helpers/many-cases.ts";
import { writeCase } from "./cases.ts";
import { type Measure, median, tableOf } from "./table.ts";

const LISTED = 5000;
const QUERIED = 10_000;
const ROUNDS = 5;

/** Milliseconds until a call of Node has ended, and the most memory it took, in MB. */
function call(...words: string[]): { ms: number; megabytes: number } {
  const from = performance.now();
  const { status, stderr } = spawnSync(process.execPath, words, {
    stdio: ["ignore", "ignore", "pipe"],
    env: { ...process.env, NODE_OPTIONS: `--import=${PEAK}` },
  });
  const ms = performance.now() - from;
  if (status !== 0) throw new Error(`${words.join(" ")}: ${stderr}`);
  return { ms, megabytes: Number(/peak (\d+)/.exec(stderr.toString())?.[1]) / 1024 };
}
/** Has a process say its own peak when it ends. */
const PEAK = `data:text/javascript,${encodeURIComponent(
  "process.on('exit',()=>process.stderr.write('peak '+process.resourceUsage().maxRSS))",
)}`;

const program = (...words: string[]) => call(bundlePath, ...words);
const usual = (take: () => { ms: number }): number => median(Array.from({ length: ROUNDS }, () => take().ms));

/** Milliseconds of a query over files of lines. */
async function queried(files: string): Promise<number> {
  const page = await readFile("DEVELOPERS.md", "utf8");
  const query = /```sql\n([\s\S]*?)```/.exec(page)?.[1] ?? "";
  const from = performance.now();
  const rows = await asked(query.replace("figures*.ndjson", files));
  const cases = rows.reduce((sum, [, runs]) => sum + Number(runs), 0);
  if (cases !== QUERIED) throw new Error(`the query found ${cases} cases`);
  return performance.now() - from;
}

if (await isStale()) await bundle();
const place = await mkdtemp(join(tmpdir(), "pumpside-many-"));
try {
  const cases = join(place, "cases");
  const nothing = { name: "node -e 0", value: usual(() => call("-e", "0")) };
  spawnSync("mkdir", [cases]);
  await writeMany(cases, LISTED);
  const names = await readdir(cases);
  const from = performance.now();
  await Promise.all(names.map((name) => stat(join(cases, name))));
  const statted = { name: "stat of each file", value: performance.now() - from };
  const cold = program("list", "--dir", cases);
  const kB = (await stat(indexOf(cases))).size / 1024 / LISTED;
  const warm = usual(() => program("list", "--dir", cases));
  const audit = usual(() =>
    program("audit", cases, "--as", "html", "--out", join(place, "a.html"), "--force"),
  );
  await writeMany(cases, QUERIED - LISTED, LISTED);
  const coldTwice = program("list", "--dir", cases);
  const warmTwice = usual(() => program("list", "--dir", cases));
  const half = await mkdtemp(join(place, "half-"));
  await writeMany(half, 1000);
  const [few, many] = [join(place, "few.ndjson"), join(place, "figures.ndjson")];
  const exportFew = program("export", half, "--what", "figures", "--out", few);
  const exportMany = program("export", cases, "--what", "figures", "--out", many);
  const read = performance.now();
  await readFile(many);
  const bytes = { name: "reading the same bytes", value: performance.now() - read };
  const duck = await queried(many);
  const [short, long] = [await writeCase(place, 1000), await writeCase(place, 10_000)];
  const measures: Measure[] = [
    { what: `list of ${LISTED}, cold`, ours: cold.ms, unit: "ms", yardstick: nothing, atMost: null },
    { what: `list of ${LISTED}, warm`, ours: warm, unit: "ms", yardstick: nothing, atMost: { value: 700 } },
    { what: `list of ${LISTED}, warm`, ours: warm, unit: "ms", yardstick: statted, atMost: null },
    {
      ...{ what: `5,000 more cases, cold`, ours: coldTwice.ms, unit: "ms" as const },
      ...{ yardstick: { name: "the first 5,000", value: cold.ms }, atMost: { times: 1.5 } },
    },
    {
      ...{ what: `list of ${QUERIED}, warm`, ours: warmTwice, unit: "ms" as const },
      ...{ yardstick: { name: `of ${LISTED}`, value: warm }, atMost: { times: 2.5 } },
    },
    { what: "index, a case", ours: kB, unit: "kB", atMost: { value: 2 } },
    { what: `audit of ${LISTED} as html, warm`, ours: audit, unit: "ms", yardstick: nothing, atMost: null },
    {
      ...{ what: `export of ${QUERIED}`, ours: exportMany.ms, unit: "ms" as const },
      ...{ yardstick: { name: "ten times of 1,000", value: 10 * exportFew.ms }, atMost: { times: 1.3 } },
    },
    {
      ...{ what: `export of ${QUERIED}, memory`, ours: exportMany.megabytes, unit: "MB" as const },
      ...{ yardstick: { name: "of 1,000", value: exportFew.megabytes }, atMost: { times: 1.3 } },
    },
    { what: `DuckDB query over ${QUERIED}`, ours: duck, unit: "ms", yardstick: bytes, atMost: null },
    ...["text", "html", "fhir"].map((as): Measure => {
      const file = join(place, `report.${as}`);
      const report = (path: string) =>
        usual(() => program("report", path, "--as", as, "--out", file, "--force"));
      return {
        ...{ what: `report as ${as}, 10,000 entries`, ours: report(long), unit: "ms" },
        ...{ yardstick: { name: "1,000 entries", value: report(short) }, atMost: { times: 10 } },
      };
    }),
    {
      ...{
        what: "review as text, 10,000 entries",
        ours: usual(() => program("review", long)),
        unit: "ms" as const,
      },
      ...{
        yardstick: { name: "1,000 entries", value: usual(() => program("review", short)) },
        atMost: { times: 10 },
      },
    },
  ];
  process.stdout.write(`${tableOf(measures)}\n`);
} finally {
  await rm(place, { recursive: true, force: true });
}
