/** Where the screen has failed: the record goes on, a stroke a line, on a terminal put back in order. */
import { createInterface, type Interface } from "node:readline";
import type { Readable, Writable } from "node:stream";
import { clockTimeOf } from "../format/instant.ts";
import { harmless } from "../format/text.ts";
import type { RunningSession } from "./session.ts";

type Streams = { readonly input: Readable; readonly output: Writable };

const LEAVE = "q";

/**
 * Takes strokes as lines, `d 300 r`, and keeps them by the session's own way, until `q`, the end of the input, or the
 * session's end. Does nothing where no case is being written.
 */
export async function plainMode(
  session: RunningSession,
  reason: string,
  { input, output }: Streams = { input: process.stdin, output: process.stdout },
): Promise<void> {
  const app = () => session.view().app;
  if (app().screen !== "run") return;
  const say = (text: string) => output.write(`${text}\n`);
  const lines = createInterface({ input, output, prompt: "pumpside> " });
  say(
    `The screen has failed (${harmless(reason)}). The record goes on: type a stroke and Enter, such as "d 300 r"; "${LEAVE}" leaves.`,
  );
  say(savedWords(session));
  const unsubscribe = session.subscribe(tellingOf(session, say, lines));
  lines.prompt();
  lines.on("line", (line) => {
    if (line.trim() === LEAVE) return lines.close();
    if (line.trim() !== "") say(answered(session, line));
    lines.prompt();
  });
  void session.ended.then(() => lines.close());
  await new Promise((closed) => lines.once("close", closed));
  unsubscribe();
}

/** What became of a line: the number of its entry, or why there is none. */
function answered(session: RunningSession, line: string): string {
  const fault = session.typed(line);
  const { app } = session.view();
  const last = app.screen === "run" ? app.model.file.entries.at(-1) : undefined;
  if (fault !== null || last === undefined) return harmless(fault ?? "");
  return `#${last.seq} ${clockTimeOf(last.at)} ${last.kind}`;
}

function savedWords(session: RunningSession): string {
  const { app } = session.view();
  if (app.screen !== "run") return "";
  const { saved, file, trouble } = app.model;
  const held = file.entries.length - saved;
  if (held === 0) return `saved ${saved}`;
  return trouble === null ? `saving ${held}` : `NOT SAVED: ${held} held in memory; ${trouble}; trying again`;
}

/** Says each change of what is saved, once. */
function tellingOf(session: RunningSession, say: (text: string) => void, lines: Interface): () => void {
  let told = savedWords(session);
  return () => {
    const words = savedWords(session);
    if (words === told || words.startsWith("saving")) return;
    told = words;
    say(words);
    // Keeps the cursor: news comes while a line is being typed.
    lines.prompt(true);
  };
}
