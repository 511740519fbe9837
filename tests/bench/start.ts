// How long it takes to start: verbs against an empty Node, the first paint against a bare Ink program bundled the same way.

import { spawnSync } from "node:child_process";
import { bundlePath } from "../../.ci/bundle.js";
import { type Measure, median } from "./table.ts";
import { begins, inTerminal, type Sight, says } from "./terminal.ts";

const ROUNDS = 31;

/** Milliseconds until a Node call has ended. */
function ended(words: readonly string[]): number {
  const from = performance.now();
  const { status, signal, stderr } = spawnSync(process.execPath, words, {
    stdio: ["ignore", "ignore", "pipe"],
  });
  if (status !== 0) throw new Error(`${words.join(" ")} ended with ${signal ?? status}: ${stderr}`);
  return performance.now() - from;
}

/** Milliseconds until a program in a terminal has drawn what it has to. */
async function painted(words: readonly string[], sight: Sight): Promise<number> {
  const from = performance.now();
  const program = inTerminal(process.execPath, words);
  await program.until("", sight);
  const took = performance.now() - from;
  await program.end();
  return took;
}

/** Rounds of all in turn, so that a busy moment of the machine hits each of them alike. */
async function inTurn(takes: readonly (() => number | Promise<number>)[]): Promise<number[]> {
  const times: number[][] = takes.map(() => []);
  for (let round = 0; round < ROUNDS; round++)
    for (const [place, take] of takes.entries()) times[place]?.push(await take());
  return times.map(median);
}

type Cases = { readonly folder: string; readonly small: string };

/** Bare Ink programs: as its packages come, and made as light and compiled ahead as the console is. */
type Hello = { readonly plain: string; readonly light: string };

/** What comes first: verbs on a small case, and the list of cases. */
export async function startMeasures({ folder, small }: Cases, hello: Hello): Promise<Measure[]> {
  const [nothing = 0, keys = 0, list = 0, figures = 0] = await inTurn([
    () => ended(["-e", "0"]),
    () => ended([bundlePath, "keys"]),
    () => ended([bundlePath, "list", "--dir", folder]),
    () => ended([bundlePath, "figures", small]),
  ]);
  const [plain = 0, light = 0, first = 0] = await inTurn([
    () => painted([hello.plain], begins("hello there")),
    () => painted([hello.light], begins("hello there")),
    () => painted([bundlePath, "--dir", folder], begins(" pumpside")),
  ]);
  const node = { name: "node -e 0", value: nothing };
  const ink = { name: "Ink hello as its packages come", value: plain };
  const lightInk = { name: "Ink hello bundled the same way", value: light };
  return [
    { what: "start: keys", ours: keys, unit: "ms", yardstick: node, atMost: { times: 3 } },
    { what: "start: list", ours: list, unit: "ms", yardstick: node, atMost: { times: 3 } },
    { what: "start: figures, 100 entries", ours: figures, unit: "ms", yardstick: node, atMost: { times: 3 } },
    { what: "first paint", ours: first, unit: "ms", yardstick: ink, atMost: null },
    { what: "first paint", ours: first, unit: "ms", yardstick: lightInk, atMost: { times: 1.25 } },
  ];
}

/** How much longer it takes where the case is long. */
export async function longStartMeasures(cases: readonly (readonly [string, string])[]): Promise<Measure[]> {
  const figures = await inTurn(
    cases.map(
      ([, path]) =>
        () =>
          ended([bundlePath, "figures", path]),
    ),
  );
  const paints = await inTurn(
    cases.map(
      ([, path]) =>
        () =>
          painted([bundlePath, "run", path], says("saved")),
    ),
  );
  const against = (values: readonly number[]) => ({ name: `${cases[0]?.[0]}`, value: values[0] ?? 0 });
  return cases.slice(1).flatMap(([size], place): Measure[] => [
    {
      what: `start: figures, ${size}`,
      ours: figures[place + 1] ?? 0,
      unit: "ms",
      yardstick: against(figures),
      atMost: null,
    },
    {
      what: `start: run, ${size}`,
      ours: paints[place + 1] ?? 0,
      unit: "ms",
      yardstick: against(paints),
      atMost: null,
    },
  ]);
}
