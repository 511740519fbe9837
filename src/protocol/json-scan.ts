/** Goes over JSON text once, without recursion, to find the first slip and every name that stands twice. */
import { type Fault, faultAt, quoted } from "./fault.ts";
import { DEEPEST, type Expected, endsEarly, type Slip, slipAt, tooDeep } from "./json-slips.ts";

/** An open bracket: the names seen in it (null for a list), and where in it the scan stands. */
type Frame = { names: Set<string> | null; step: string | number };
type State = { readonly text: string; at: number; expected: Expected; frames: Frame[]; faults: Fault[] };

// biome-ignore lint/suspicious/noControlCharactersInRegex: exactly these are forbidden within a JSON text
const TEXT = /"[^"\\\u0000-\u001f]*(?:\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})[^"\\\u0000-\u001f]*)*"/y;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?(?![\w.+-])/y;
const WORD = /(?:true|false|null)(?!\w)/y;
const GAP = /[ \t\n\r]*/y;

/** The slip that keeps the text from being JSON, or the names that stand twice in JSON that is whole. */
export function scanJson(text: string): { slip: Slip } | { faults: Fault[] } {
  const state: State = { text, at: 0, expected: "value", frames: [], faults: [] };
  for (;;) {
    state.at += match(GAP, state)?.length ?? 0;
    if (state.at >= text.length) {
      return state.expected === "nothing" ? { faults: state.faults } : { slip: endsEarly(state.at) };
    }
    const slip = step(state);
    if (slip) return { slip };
  }
}

function step(state: State): Slip | null {
  const sign = state.text[state.at] ?? "";
  const frame = state.frames.at(-1);
  if (closes(sign, state.expected, frame)) return close(state);
  switch (state.expected) {
    case "value":
    case "value or ]":
      return sign === "{" || sign === "[" ? open(state, sign) : scalar(state);
    case "name":
    case "name or }":
      return frame?.names ? name(state, frame, frame.names) : slipHere(state);
    case ":":
      return sign === ":" ? moveOn(state, 1, "value") : slipHere(state);
    case ", or end":
      return sign === "," && frame ? comma(state, frame) : slipHere(state);
    case "nothing":
      return slipHere(state);
    default:
      return state.expected satisfies never;
  }
}

function closes(sign: string, expected: Expected, frame: Frame | undefined): boolean {
  if (frame === undefined || sign !== (frame.names ? "}" : "]")) return false;
  return expected === ", or end" || expected === "name or }" || expected === "value or ]";
}

function close(state: State): null {
  state.frames.pop();
  return moveOn(state, 1, afterValue(state));
}

function open(state: State, sign: "{" | "["): Slip | null {
  if (state.frames.length === DEEPEST) return tooDeep(state.at);
  state.frames.push(sign === "{" ? { names: new Set(), step: "" } : { names: null, step: 0 });
  return moveOn(state, 1, sign === "{" ? "name or }" : "value or ]");
}

function scalar(state: State): Slip | null {
  const token = match(TEXT, state) ?? match(NUMBER, state) ?? match(WORD, state);
  return token === undefined ? slipHere(state) : moveOn(state, token.length, afterValue(state));
}

function name(state: State, frame: Frame, names: Set<string>): Slip | null {
  const token = match(TEXT, state);
  if (token === undefined) return slipHere(state);
  frame.step = JSON.parse(token) as string;
  if (names.has(frame.step)) state.faults.push(standsTwice(state.frames, frame.step));
  names.add(frame.step);
  return moveOn(state, token.length, ":");
}

function comma(state: State, frame: Frame): null {
  if (typeof frame.step === "number") frame.step++;
  return moveOn(state, 1, frame.names ? "name" : "value");
}

function moveOn(state: State, length: number, expected: Expected): null {
  state.at += length;
  state.expected = expected;
  return null;
}

const afterValue = ({ frames }: State): Expected => (frames.length > 0 ? ", or end" : "nothing");

const slipHere = ({ text, at, expected }: State): Slip => slipAt(text, at, expected);

function match(pattern: RegExp, { text, at }: State): string | undefined {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0];
}

const standsTwice = (frames: readonly Frame[], twice: string): Fault =>
  faultAt(
    frames.map((frame) => frame.step),
    `the name ${quoted(twice)} stands twice, and only one of the two would count`,
    "keep one of them",
  );
