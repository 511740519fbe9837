/** What the terminal can show, and the one place where all that is written is put into plain ASCII where it must be. */
import stringWidth from "string-width";
import { inAscii } from "../format/ascii.ts";
import { thinned } from "./thin.ts";

type TerminalOptions = {
  /** As asked for; without a wish what the terminal says of itself decides. */
  readonly ascii?: boolean | undefined;
  readonly screenReader?: boolean | undefined;
};

type Environment = Readonly<Record<string, string | undefined>>;

/** Windows terminals that show all signs whatever the code page is. */
const MODERN_ON_WINDOWS = ["WT_SESSION", "TERM_PROGRAM", "ConEmuANSI", "MSYSTEM"];
const UTF8_CODE_PAGE = "65001";

/**
 * Whether a terminal has to be written to in plain ASCII: one without more signs (`TERM`), one told of another encoding
 * (`LC_ALL`, `LC_CTYPE`, `LANG`), or an old Windows console whose code page is not UTF-8.
 */
export function needsAscii(env: Environment, platform: NodeJS.Platform): boolean {
  if (env.TERM === "linux" || env.TERM === "dumb") return true;
  if (platform === "win32")
    return (
      env.PUMPSIDE_CODE_PAGE !== UTF8_CODE_PAGE && !MODERN_ON_WINDOWS.some((name) => env[name] !== undefined)
    );
  const locale = env.LC_ALL || env.LC_CTYPE || env.LANG || "";
  return locale !== "" && !/utf-?8/i.test(locale);
}

/** `ascii` where the charts too have to do without braille. */
export const lookOf = (env: Environment): "braille" | "ascii" =>
  env.PUMPSIDE_ASCII === "1" ? "ascii" : "braille";

/** Settles for the whole program what the terminal can show; the screens read it from the environment. */
export function setUpTerminal({ ascii, screenReader }: TerminalOptions): void {
  if (screenReader) process.env.INK_SCREEN_READER = "true";
  const plain = ascii ?? needsAscii(process.env, process.platform);
  if (plain) process.env.PUMPSIDE_ASCII = "1";
  for (const name of ["stdout", "stderr"] as const)
    atFirstUse(name, (stream) => {
      if (!stream.isTTY && name === "stdout") stream.on("error", endWhenUnread);
      // What goes into a file or another program keeps its signs, unless ASCII was asked for.
      if (plain && (stream.isTTY || ascii)) rewrite(stream, (text) => inAscii(text, stringWidth));
      if (stream.isTTY) rewrite(stream, thinned);
      if (process.env.NO_COLOR) rewrite(stream, withoutColours);
    });
}

/** Node makes a stream when it is asked for, and few calls ever have a complaint to write. */
function atFirstUse(name: "stdout" | "stderr", prepare: (stream: NodeJS.WriteStream) => void): void {
  const asIs = Object.getOwnPropertyDescriptor(process, name);
  const prepared = (): NodeJS.WriteStream => {
    if (asIs) Object.defineProperty(process, name, asIs);
    prepare(process[name]);
    return process[name];
  };
  Object.defineProperty(process, name, { configurable: true, enumerable: true, get: prepared });
}

/** A reader such as `head` that has seen enough closes the pipe: there is nothing left to do. */
function endWhenUnread(error: NodeJS.ErrnoException): void {
  if (error.code !== "EPIPE") throw error;
  process.exit();
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: terminals begin their sequences with Esc.
const COLOURS = /\x1b\[(?:[349][0-9]|10[0-7]|[34]8;[0-9;]+)m/g;

/** Colours go; weight and reverse stay, for they carry no colour and the cursor is made of them. */
export const withoutColours = (text: string): string => text.replace(COLOURS, "");

/** From now on whatever is written to a stream goes through `change`. */
function rewrite(stream: NodeJS.WriteStream, change: (text: string) => string): void {
  const write = stream.write.bind(stream) as (...given: unknown[]) => boolean;
  stream.write = ((text: unknown, ...rest: unknown[]) =>
    write(typeof text === "string" ? change(text) : text, ...rest)) as typeof stream.write;
}
