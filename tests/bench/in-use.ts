// A console in use, in a real terminal: keys, saving, ticks, idle work and memory.

import { open, readFile, rename } from "node:fs/promises";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { spawn } from "@lydell/node-pty";
import { bundlePath } from "../../.ci/bundle.js";
import { quantile } from "./table.ts";

const KEYS = 200;
const SAVES = 40;
const IDLE_SECONDS = 20;
/** Milliseconds after which an answer is not waited for any more. */
const LONGEST = 10_000;

// What is saved is green; of its words only what has changed is drawn, which is a digit at the least.
// biome-ignore lint/suspicious/noControlCharactersInRegex: terminals begin their sequences with Esc.
const SAVED = /\x1b\[32m[^\x1b]*\d/;

/** A program in a terminal of 80 by 24, and what it writes. */
function inTerminal(program: string, words: readonly string[]) {
  const env = { ...process.env, TERM: "xterm-256color", NODE_ENV: "production" } as Record<string, string>;
  for (const name of ["CI", "VITEST", "NODE_OPTIONS"]) delete env[name];
  const pty = spawn(program, [...words], { cols: 80, rows: 24, env });
  let written = 0;
  let seen = "";
  let looking: (() => void) | null = null;
  pty.onData((piece) => {
    written += Buffer.byteLength(piece);
    seen = (seen + piece).slice(-20_000);
    looking?.();
  });
  return {
    pid: pty.pid,
    bytes: () => written,
    end: () => pty.kill("SIGKILL"),
    /** Milliseconds from sending keys until `isThere` holds for what was written since. */
    until(keys: string, isThere: (since: string) => boolean): Promise<number> {
      seen = "";
      const from = performance.now();
      const { promise, resolve, reject } = Promise.withResolvers<number>();
      const late = setTimeout(
        () => reject(new Error(`no answer to ${JSON.stringify(keys)}: ${seen}`)),
        LONGEST,
      );
      looking = () => {
        if (!isThere(seen)) return;
        looking = null;
        clearTimeout(late);
        resolve(performance.now() - from);
      };
      if (keys !== "") pty.write(keys);
      return promise;
    },
  };
}

/** The milliseconds of a process's work so far, all its threads together. */
async function workOf(pid: number): Promise<number> {
  const fields = (await readFile(`/proc/${pid}/stat`, "utf8")).replace(/^.*\) /, "").split(" ");
  return (Number(fields[11]) + Number(fields[12])) * 10;
}

const memoryOf = async (pid: number): Promise<number> =>
  Number((await readFile(`/proc/${pid}/status`, "utf8")).match(/VmRSS:\s+(\d+)/)?.[1]) / 1024;

export type InUse = {
  readonly key: { readonly p50: number; readonly p99: number };
  readonly saved: number;
  readonly bareWrite: number;
  readonly tickBytes: number;
  readonly idlePercent: number;
  readonly memory: number;
  readonly grown: number;
};

/** Measures a console on the case at `path`. */
export async function inUse(path: string, { idles = false } = {}): Promise<InUse> {
  const console = inTerminal(process.execPath, [bundlePath, "run", path]);
  await console.until("", (text) => text.includes("saved"));
  await sleep(1500);
  // An entry line is opened, filled and emptied: every key of it is drawn.
  const keys: number[] = [];
  await console.until("u", (text) => text.length > 0);
  for (let key = 0; key < KEYS; key++) {
    await sleep(40);
    keys.push(await console.until(key % 2 === 0 ? "5" : "\x7f", (text) => text.length > 0));
  }
  await console.until("\x1b", (text) => text.length > 0);
  const memory = await memoryOf(console.pid);
  const saves: number[] = [];
  for (let save = 0; save < SAVES; save++) {
    await sleep(30);
    await console.until("a", (text) => text.length > 0);
    await console.until("4", (text) => text.length > 0);
    await console.until("8", (text) => text.length > 0);
    saves.push(await console.until("\r", (text) => SAVED.test(text)));
  }
  const idle = idles ? await idling(console) : { bytes: Number.NaN, percent: Number.NaN };
  const grown = (await memoryOf(console.pid)) - memory;
  console.end();
  return {
    key: { p50: quantile(keys, 0.5), p99: quantile(keys, 0.99) },
    saved: quantile(saves, 0.99),
    bareWrite: await bareWrite(path),
    tickBytes: idle.bytes,
    idlePercent: idle.percent,
    memory,
    grown,
  };
}

async function idling({ pid, bytes }: { pid: number; bytes: () => number }) {
  await sleep(1000);
  const [workBefore, bytesBefore] = [await workOf(pid), bytes()];
  await sleep(IDLE_SECONDS * 1000);
  return {
    bytes: (bytes() - bytesBefore) / IDLE_SECONDS,
    percent: ((await workOf(pid)) - workBefore) / IDLE_SECONDS / 10,
  };
}

/** The p99 of writing the same bytes beside the case, forcing them to the disk and renaming them into place. */
async function bareWrite(path: string): Promise<number> {
  const bytes = await readFile(path);
  const times: number[] = [];
  for (let save = 0; save < SAVES; save++) {
    await sleep(30);
    const from = performance.now();
    const file = await open(`${path}.bare`, "w");
    await file.writeFile(bytes);
    await file.sync();
    await file.close();
    await rename(`${path}.bare`, `${path}.bare-done`);
    const folder = await open(join(path, ".."), "r");
    await folder.sync();
    await folder.close();
    times.push(performance.now() - from);
  }
  return quantile(times, 0.99);
}

/** What a general terminal program that draws once a second uses of a core; `null` where none is installed. */
export async function idleOfOthers(): Promise<{ name: string; value: number } | null> {
  for (const [name, words] of [
    ["htop", ["-d", "10"]],
    ["top", ["-d", "1"]],
  ] as const) {
    const other = inTerminal(name, words);
    try {
      await sleep(1500);
      return { name: `${name} once a second`, value: (await idling(other)).percent };
    } catch {
      // Not installed: the next one.
    } finally {
      other.end();
    }
  }
  return null;
}
