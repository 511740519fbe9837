/** Asking on the terminal for what nobody may read over a shoulder: nothing of it is shown, not even how long it is. */
import { StringDecoder } from "node:string_decoder";
import type { Key } from "../console/key.ts";
import { NOTHING_HELD, readKeys } from "../console/key-reader.ts";

/** Whether there is somebody to ask. */
export const canAsk = (): boolean => Boolean(process.stdin.isTTY && process.stderr.isTTY);

/** Up to the first Enter, and what was typed ahead of the next question. */
const LINE = /^([^\r\n]*)(\r\n?|\n)?(.*)$/s;

/**
 * What is typed up to Enter; `null` when the person thinks better of it (Ctrl-C, Ctrl-D) or the terminal is gone. The
 * terminal is afterwards as it was before.
 */
export async function askHidden(question: string): Promise<string | null> {
  const { stdin, stderr } = process;
  stderr.write(question);
  stdin.setRawMode(true);
  try {
    return await typedLine(stdin);
  } finally {
    stdin.setRawMode(false);
    stderr.write("\n");
  }
}

function typedLine(input: NodeJS.ReadStream): Promise<string | null> {
  const { promise, resolve } = Promise.withResolvers<string | null>();
  const decoder = new StringDecoder("utf8");
  let held = NOTHING_HELD;
  let typed: string | null = "";

  const end = (answer: string | null): void => {
    input.off("data", received);
    input.off("end", gone);
    // Before anything is put back: a stream that still flows would give it to nobody.
    input.pause();
    resolve(answer);
  };
  const gone = (): void => end(null);
  const received = (chunk: Uint8Array | string): void => {
    const piece = typeof chunk === "string" ? chunk : decoder.write(chunk);
    const [, line = "", enter, ahead = ""] = LINE.exec(piece.replaceAll(END_OF_INPUT, INTERRUPT)) ?? [];
    const read = readKeys(held, line);
    held = read.held;
    for (const key of read.keys) typed = typed === null ? null : after(typed, key);
    if (typed === null || enter !== undefined) end(typed);
    if (ahead !== "") input.unshift(Buffer.from(ahead));
  };
  input.on("data", received);
  input.on("end", gone);
  input.resume();
  return promise;
}

const INTERRUPT = "\x03";
const END_OF_INPUT = "\x04";

/** What has been typed after one more key; `null` after Ctrl-C. Keys that write nothing change nothing. */
function after(typed: string, key: Key): string | null {
  switch (key.name) {
    case "char":
      return typed + key.char;
    case "paste":
      return typed + key.text;
    case "backspace":
      return [...typed].slice(0, -1).join("");
    case "interrupt":
      return null;
    default:
      return typed;
  }
}
