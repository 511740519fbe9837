// A console in a real terminal: the built program runs in a pty, and tests read the screen it draws, never its bytes.

import { setTimeout as sleep } from "node:timers/promises";
import { spawn } from "@lydell/node-pty";
import xterm from "@xterm/headless";
import { bundlePath } from "../../.ci/bundle.js";

/** Makes sure that the bundle is today's; fit for vitest's `globalSetup`. */
export { default as buildOnce } from "../setup/bundle.ts";

export type ConsoleOptions = {
  /** Keeps the cases (`PUMPSIDE_DIR`) and is the working directory: a folder of the test's own. */
  dir: string;
  args?: string[];
  cols?: number;
  rows?: number;
  /** Laid over the environment of the tests; undefined takes a variable away. */
  env?: Record<string, string | undefined>;
  /** What to run in place of the bundle. */
  program?: string;
};

export type Exit = { exitCode: number; signal: number | undefined };
/** A text that stands within one line, or a test of all lines. */
export type Sight = string | ((screen: string[]) => boolean);
export type RunningConsole = ReturnType<typeof startConsole>;

/** Keys as a terminal sends them, to be put into what is typed: `type(`d300${keys.enter}`)`. */
export const keys = {
  enter: "\r",
  tab: "\t",
  backTab: "\x1b[Z",
  backspace: "\x7f",
  delete: "\x1b[3~",
  escape: "\x1b",
  up: "\x1b[A",
  down: "\x1b[B",
  right: "\x1b[C",
  left: "\x1b[D",
  home: "\x1b[H",
  end: "\x1b[F",
  pageUp: "\x1b[5~",
  pageDown: "\x1b[6~",
  interrupt: "\x03",
} as const;

// One key: an escape sequence as a whole, a lone Esc, or one code point.
// biome-ignore lint/suspicious/noControlCharactersInRegex: terminals begin their sequences with Esc.
const oneKey = /\x1b\[[0-?]*[@-~]|\x1bO[@-~]|./gsu;
const pauseBetweenKeys = 5;
const pauseBetweenLooks = 10;
const settling = 100;

/** The private mode that shows and hides the cursor. */
const CURSOR = 25;

const running = new Set<{ kill(signal: string): void; exited: Promise<Exit> }>();

/** Ends every console that is still running, for `afterEach`. */
export async function stopConsoles(): Promise<void> {
  for (const one of running) one.kill("SIGKILL");
  await Promise.all([...running].map((one) => one.exited));
}

/** The environment of the tests without what makes Ink, React or Node behave as under test. */
function childEnvironment({ dir, env }: ConsoleOptions): Record<string, string> {
  // What can be saved nowhere else stays with the test.
  const home = { XDG_DATA_HOME: `${dir}-home` };
  const ours = {
    ...home,
    CI: undefined,
    NODE_OPTIONS: undefined,
    TERM: "xterm-256color",
    NODE_ENV: "production",
  };
  const wanted = Object.entries({ ...process.env, ...ours, PUMPSIDE_DIR: dir, ...env });
  return Object.fromEntries(
    wanted.flatMap(([name, value]) =>
      value === undefined || /^VITEST(_|$)/.test(name) ? [] : [[name, value]],
    ),
  );
}

/** Starts the program in a terminal of its own, 80 by 24 unless told otherwise. */
export function startConsole(options: ConsoleOptions) {
  const { dir, args = [], cols = 80, rows = 24, program = bundlePath } = options;
  const terminal = new xterm.Terminal({ cols, rows, allowProposedApi: true });
  const env = childEnvironment(options);
  const pty = spawn(process.execPath, [program, ...args], { cols, rows, cwd: dir, env });
  let cursorShown = true;
  for (const [final, shown] of [
    ["h", true],
    ["l", false],
  ] as const) {
    terminal.parser.registerCsiHandler({ prefix: "?", final }, (modes) => {
      if (modes.flat().includes(CURSOR)) cursorShown = shown;
      return false;
    });
  }
  let written = 0;
  let ended: Exit | undefined;
  pty.onData((data) => {
    written += Buffer.byteLength(data);
    terminal.write(data);
  });
  const drawn = () => new Promise<void>((resolve) => terminal.write("", resolve));
  const screen = (): string[] => {
    const { active } = terminal.buffer;
    const line = (row: number) => active.getLine(active.baseY + row)?.translateToString(true) ?? "";
    return Array.from({ length: terminal.rows }, (_, row) => line(row).trimEnd());
  };
  const send: (bytes: string | Uint8Array) => void = (bytes) => {
    if (ended === undefined) (pty as { write(data: string | Uint8Array): void }).write(bytes);
  };
  const exited = new Promise<Exit>((resolve) => {
    pty.onExit(async ({ exitCode, signal }) => {
      ended = { exitCode, signal: signal || undefined };
      running.delete(started);
      await drawn();
      resolve(ended);
    });
  });

  const started = {
    pid: pty.pid,
    /** The terminal itself, for its modes and for which of its two screens is shown. */
    terminal,
    screen,
    exited,
    /** Whether the terminal shows its cursor. */
    cursorShown: () => cursorShown,
    /** Bytes that the program has written so far. */
    bytesWritten: () => written,
    kill: (signal = "SIGTERM") => pty.kill(signal),
    /** Sends bytes in one piece, whatever they are: glued keys, half a sequence, half a character. */
    raw: send,
    /** Types as a person does: key by key. */
    async type(text: string): Promise<void> {
      for (const [key] of text.matchAll(oneKey)) {
        send(key);
        await sleep(pauseBetweenKeys);
      }
    },
    resize(newCols: number, newRows: number): void {
      terminal.resize(newCols, newRows);
      pty.resize(newCols, newRows);
    },
    /** The screen once nothing more is written to it: what was seen first may be a part of a frame. */
    async settled(): Promise<string[]> {
      for (let before = -1; before !== written; await sleep(settling)) before = written;
      await drawn();
      return screen();
    },
    /** Looks until the sight is there and gives the screen; else throws with the screen as it was at the end. */
    async waitFor(sight: Sight, timeoutMs = 5_000): Promise<string[]> {
      const isThere =
        typeof sight === "string" ? (lines: string[]) => lines.join("\n").includes(sight) : sight;
      const deadline = performance.now() + timeoutMs;
      for (;;) {
        const last = ended !== undefined || performance.now() > deadline;
        await drawn();
        const seen = screen();
        if (isThere(seen)) return seen;
        if (last) {
          const when = ended ? `before the program ended ${JSON.stringify(ended)}` : `within ${timeoutMs} ms`;
          throw new Error(`${sight.toString()} was not seen ${when}; the screen:\n${seen.join("\n")}`);
        }
        await sleep(pauseBetweenLooks);
      }
    },
  };
  running.add(started);
  return started;
}
