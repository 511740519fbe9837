// A program in a terminal of 80 by 24 whose screen is looked at with every piece it writes: no polling, no rounding.

import { readFile } from "node:fs/promises";
import { spawn } from "@lydell/node-pty";
import xterm from "@xterm/headless";

export type Sight = (row: (place: number) => string) => boolean;
export type InTerminal = ReturnType<typeof inTerminal>;

/** How long a sight may take before the bench gives up. */
const PATIENCE = 60_000;

export function inTerminal(program: string, words: readonly string[]) {
  const env = { ...process.env, TERM: "xterm-256color", NODE_ENV: "production" } as Record<string, string>;
  for (const name of ["CI", "VITEST", "NODE_OPTIONS"]) delete env[name];
  const terminal = new xterm.Terminal({ cols: 80, rows: 24, allowProposedApi: true });
  const pty = spawn(program, [...words], { cols: 80, rows: 24, env });
  let written = 0;
  let look: () => void = () => {};
  pty.onData((piece) => {
    written += Buffer.byteLength(piece);
    terminal.write(piece, () => look());
  });
  const row = (place: number): string => {
    const { active } = terminal.buffer;
    return active.getLine(active.baseY + place)?.translateToString(true) ?? "";
  };
  return {
    pid: pty.pid,
    bytes: () => written,
    /** Ends it as a closed terminal would, so that it lets go of what it holds. */
    async end(): Promise<void> {
      const { promise, resolve } = Promise.withResolvers<void>();
      pty.onExit(() => resolve());
      pty.kill("SIGTERM");
      await promise;
    },
    /** Milliseconds from sending keys until the screen shows the sight. */
    until(keys: string, sight: Sight): Promise<number> {
      const { promise, resolve, reject } = Promise.withResolvers<number>();
      const timer = setTimeout(() => {
        const screen = Array.from({ length: 24 }, (_, place) => row(place)).join("\n");
        reject(new Error(`not seen after ${JSON.stringify(keys)}:\n${screen}`));
      }, PATIENCE);
      const from = performance.now();
      look = () => {
        if (!sight(row)) return;
        look = () => {};
        clearTimeout(timer);
        resolve(performance.now() - from);
      };
      if (keys === "") look();
      else pty.write(keys);
      return promise;
    },
  };
}

/** A line of the screen that begins so. */
export const begins =
  (text: string): Sight =>
  (row) =>
    Array.from({ length: 24 }, (_, place) => row(place)).some((line) => line.startsWith(text));

/** The first row says so. */
export const says =
  (text: string): Sight =>
  (row) =>
    row(0).includes(text);

/** Milliseconds of a process's work so far, all its threads together. */
export async function workOf(pid: number): Promise<number> {
  const fields = (await readFile(`/proc/${pid}/stat`, "utf8")).replace(/^.*\) /, "").split(" ");
  return (Number(fields[11]) + Number(fields[12])) * 10;
}

/** Megabytes of a process in memory. */
export const memoryOf = async (pid: number): Promise<number> =>
  Number((await readFile(`/proc/${pid}/status`, "utf8")).match(/VmRSS:\s+(\d+)/)?.[1]) / 1024;
