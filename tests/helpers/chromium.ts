/** A headless Chromium, where the machine has one, driven over its own protocol: a page, what it asks the net, and PDF. */
import { type ChildProcess, spawn } from "node:child_process";
import { accessSync, constants, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { pathToFileURL } from "node:url";

const NAMES = ["chromium", "chromium-browser", "google-chrome-stable", "google-chrome"];

const QUIET = [
  ...["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run"],
  ...["--disable-background-networking", "--disable-component-update", "--disable-sync"],
  ...["--hide-scrollbars", "--remote-debugging-port=0"],
];

/** Where a Chromium is; `null` on a machine without one. */
export function chromiumPath(): string | null {
  const folders = (process.env.PATH ?? "").split(delimiter);
  const candidates = folders.flatMap((folder) => NAMES.map((name) => join(folder, name)));
  return candidates.find(isProgram) ?? null;
}

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

type Answer = {
  id?: number;
  method?: string;
  params?: { [name: string]: unknown };
  result?: object;
  error?: object;
};

export type Page = Awaited<ReturnType<typeof openPage>>;

/** Opens a file as a page. Everything that the page asks for, itself apart, is in `asked`. */
export async function openPage(browser: string, file: string) {
  const profile = mkdtempSync(join(tmpdir(), "pumpside-page-"));
  const child = spawn(browser, [...QUIET, `--user-data-dir=${profile}`, "about:blank"], { stdio: "ignore" });
  const socket = await connected(profile, child);
  const address = pathToFileURL(file).href;
  const asked: string[] = [];
  const faults: string[] = [];
  const waiting = new Map<number, (answer: Answer) => void>();
  const events = new Map<string, () => void>();
  let last = 0;
  socket.addEventListener("message", ({ data }) => {
    const answer = JSON.parse(String(data)) as Answer;
    const { id, method, params } = answer;
    if (id !== undefined) waiting.get(id)?.(answer);
    if (method === "Network.requestWillBeSent") {
      const { url } = (params as { request: { url: string } }).request;
      if (url !== address) asked.push(url);
    }
    if (method === "Log.entryAdded" || method === "Runtime.exceptionThrown")
      faults.push(JSON.stringify(params));
    if (method === "Page.javascriptDialogOpening") faults.push("a dialog opened");
    if (method !== undefined) events.get(method)?.();
  });
  const send = async <T>(method: string, params: object = {}): Promise<T> => {
    last += 1;
    const id = last;
    const answered = new Promise<Answer>((resolve) => waiting.set(id, resolve));
    socket.send(JSON.stringify({ id, method, params }));
    const { result, error } = await answered;
    if (error) throw new Error(`${method}: ${JSON.stringify(error)}`);
    return result as T;
  };
  for (const domain of ["Page", "Network", "Log", "Runtime"]) await send(`${domain}.enable`);
  const loaded = new Promise<void>((resolve) => events.set("Page.loadEventFired", resolve));
  await send("Page.navigate", { url: address });
  await loaded;
  return {
    asked,
    faults,
    send,
    /** The value of an expression on the page. */
    async evaluate<T>(expression: string): Promise<T> {
      const answer = await send<{ result: { value: T }; exceptionDetails?: object }>("Runtime.evaluate", {
        expression,
        awaitPromise: true,
        returnByValue: true,
      });
      if (answer.exceptionDetails) throw new Error(JSON.stringify(answer.exceptionDetails));
      return answer.result.value;
    },
    async close(): Promise<void> {
      const ended = new Promise((resolve) => child.once("exit", resolve));
      socket.close();
      child.kill();
      await ended;
      rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

/** The socket of the browser's first page, once it has said where it listens. */
async function connected(profile: string, child: ChildProcess): Promise<WebSocket> {
  for (let tries = 0; tries < 200 && child.exitCode === null; tries += 1) {
    await pause(100);
    const port = portIn(profile);
    if (port === null) continue;
    const pages = (await (await fetch(`http://127.0.0.1:${port}/json`)).json()) as {
      type: string;
      webSocketDebuggerUrl: string;
    }[];
    const page = pages.find(({ type }) => type === "page");
    if (!page) continue;
    const socket = new WebSocket(page.webSocketDebuggerUrl);
    await new Promise((resolve, reject) => {
      socket.addEventListener("open", resolve, { once: true });
      socket.addEventListener("error", reject, { once: true });
    });
    return socket;
  }
  child.kill();
  throw new Error("the browser did not start");
}

/** The port, once the file that tells it has been written to the end of its first line. */
function portIn(profile: string): string | null {
  try {
    return /^(\d+)\n/.exec(readFileSync(join(profile, "DevToolsActivePort"), "utf8"))?.[1] ?? null;
  } catch {
    return null;
  }
}
