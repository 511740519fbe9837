// How long it takes to start: verbs against an empty Node, the first paint against a bare Ink program bundled the same way.

import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { spawn } from "@lydell/node-pty";
import { bundle, bundlePath } from "../../.ci/bundle.js";
import { type Measure, median } from "./table.ts";

const ROUNDS = 15;

/** Milliseconds until a Node call has ended. */
function ended(words: readonly string[]): number {
  const from = performance.now();
  const { status, stderr } = spawnSync(process.execPath, words, { stdio: ["ignore", "ignore", "pipe"] });
  if (status !== 0) throw new Error(`${words.join(" ")}: ${stderr}`);
  return performance.now() - from;
}

/** Milliseconds until a program in a terminal has drawn a text; it is ended then. */
function painted(words: readonly string[], sight: string): Promise<number> {
  const from = performance.now();
  const env = { ...process.env, TERM: "xterm-256color" } as Record<string, string>;
  for (const name of ["CI", "VITEST", "NODE_OPTIONS"]) delete env[name];
  const pty = spawn(process.execPath, [...words], { cols: 80, rows: 24, env });
  return new Promise((resolve) => {
    let seen = "";
    let at = 0;
    pty.onData((piece) => {
      seen += piece;
      if (at > 0 || !seen.includes(sight)) return;
      at = performance.now() - from;
      pty.kill("SIGKILL");
    });
    pty.onExit(() => resolve(at));
  });
}

/** Rounds of all in turn, so that a busy moment of the machine hits each of them alike. */
async function inTurn(takes: readonly (() => number | Promise<number>)[]): Promise<number[]> {
  const times: number[][] = takes.map(() => []);
  for (let round = 0; round < ROUNDS; round++)
    for (const [place, take] of takes.entries()) times[place]?.push(await take());
  return times.map(median);
}

/** `path` is a case of the usual length in a folder of cases. */
export async function startMeasures(folder: string, path: string): Promise<Measure[]> {
  const hello = join(folder, "hello.js");
  await bundle({ input: "tests/bench/hello.tsx", file: hello });
  const [nothing = 0, keys = 0, list = 0, figures = 0] = await inTurn([
    () => ended(["-e", "0"]),
    () => ended([bundlePath, "keys"]),
    () => ended([bundlePath, "list", "--dir", folder]),
    () => ended([bundlePath, "figures", path]),
  ]);
  const [bare = 0, first = 0] = await inTurn([
    () => painted([hello], "hello there"),
    () => painted([bundlePath, "--dir", folder], "cases in"),
  ]);
  const node = { name: "node -e 0", value: nothing };
  return [
    { what: "start: keys", ours: keys, unit: "ms", yardstick: node, atMost: { times: 3 } },
    { what: "start: list", ours: list, unit: "ms", yardstick: node, atMost: { times: 3 } },
    { what: "start: figures, 100 entries", ours: figures, unit: "ms", yardstick: node, atMost: { times: 3 } },
    {
      what: "first paint",
      ours: first,
      unit: "ms",
      yardstick: { name: "bare Ink hello", value: bare },
      atMost: { times: 1.25 },
    },
  ];
}
