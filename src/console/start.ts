/** The start screen: the cases there are, and what can be done with them. */
import { harmless } from "../format/text.ts";
import type { Key } from "./key.ts";
import type { Typing } from "./model.ts";
import { edited, inserted, typing } from "./typing.ts";

/** A case as the list shows it; a damaged one has its fault in place of the rest. */
export type CaseLine = {
  readonly path: string;
  readonly id: string;
  readonly label?: string;
  readonly opened?: string;
  readonly entries?: number;
  readonly state?: "open" | "closed";
  readonly operation?: string | undefined;
  readonly fault?: string | undefined;
  /** What a person has to know of a case that is damaged and can be opened as far as it is whole. */
  readonly damage?: string | undefined;
};

/** Whose lock on a case may be taken over: that of a process that has ended, or that of another computer. */
export type TakeOver = "ended" | "elsewhere";

export type Start = {
  /** `null` until the folder has been read. */
  readonly cases: readonly CaseLine[] | null;
  readonly chosen: number;
  /** The line that asks for initials and a label, while it is open; Tab turns over the protocols. */
  readonly asking: (Typing & { readonly protocol: string }) | null;
  /** Names of the protocols a new case can carry, the usual one first. */
  readonly protocols: readonly string[];
  readonly notice: string | null;
  /** The case whose lock the person is asked about, while they are. */
  readonly locked: { readonly path: string; readonly takeOver: TakeOver } | null;
};

export type StartEffect =
  | {
      readonly do: "open";
      readonly path: string;
      readonly to: "run" | "review";
      /** Whose lock the person has said may be taken over. */
      readonly takeOver?: TakeOver;
    }
  | { readonly do: "create"; readonly operator: string; readonly label: string; readonly protocol: string }
  | { readonly do: "demo" }
  | { readonly do: "samples" }
  | { readonly do: "quit" };

type StartStep = { readonly start: Start; readonly effects: readonly StartEffect[] };

/** The start screen before the folder has been read. */
export const openStart = (protocols: readonly string[], notice: string | null = null): Start => ({
  protocols,
  cases: null,
  chosen: 0,
  asking: null,
  notice,
  locked: null,
});

/** Asks whether another's lock is to be taken over. */
export const askedToTakeOver = (
  start: Start,
  asked: { fault: string; path: string; takeOver: TakeOver },
): Start => ({
  ...start,
  locked: asked,
  notice: `Locked: ${asked.fault} ${asked.takeOver === "ended" ? "Enter takes it over" : "Only if that computer is off: Enter takes it over"}; any other key leaves it.`,
});

/** The keys of the start screen, for handling and for its hint row. */
export const START_KEYS: readonly (readonly [key: string, what: string])[] = [
  ["n", "new case"],
  ["Enter", "resume"],
  ["v", "review"],
  ["s", "sample cases"],
  ["d", "demo"],
  ["q", "leave"],
];

const still = (start: Start): StartStep => ({ start, effects: [] });

/** Pure: the same screen and key always give the same step. */
export function updateStart(start: Start, key: Key): StartStep {
  if (start.locked) return inLocked(start, start.locked, key);
  return start.asking ? inAsking(start, start.asking, key) : inList(start, key);
}

function inLocked(start: Start, { path, takeOver }: NonNullable<Start["locked"]>, key: Key): StartStep {
  const after = { ...start, locked: null };
  if (key.name !== "enter") return still({ ...after, notice: null });
  return { start: { ...after, notice: "Opening …" }, effects: [{ do: "open", path, to: "run", takeOver }] };
}

function inList(start: Start, key: Key): StartStep {
  const cases = start.cases ?? [];
  const chosen = cases[start.chosen];
  if (key.name === "up" || key.name === "down") {
    const place = start.chosen + (key.name === "up" ? -1 : 1);
    return still({ ...start, chosen: Math.max(0, Math.min(cases.length - 1, place)), notice: null });
  }
  if (key.name === "enter")
    return chosen ? opening(start, chosen, chosen.state === "open" ? "run" : "review") : still(start);
  if (key.name === "interrupt") return { start, effects: [{ do: "quit" }] };
  if (key.name !== "char") return still(start);
  switch (key.char) {
    case "n":
      return still({ ...start, asking: { ...typing(), protocol: start.protocols[0] ?? "" }, notice: null });
    case "v":
      return chosen ? opening(start, chosen, "review") : still(start);
    case "s":
      return { start, effects: [{ do: "samples" }] };
    case "d":
      return { start, effects: [{ do: "demo" }] };
    case "q":
      return { start, effects: [{ do: "quit" }] };
    default:
      return still({
        ...start,
        notice: `"${harmless(key.char)}" does nothing here: the keys are in the last row.`,
      });
  }
}

function opening(start: Start, chosen: CaseLine, to: "run" | "review"): StartStep {
  if (chosen.fault !== undefined)
    return still({ ...start, notice: `This case cannot be opened: ${chosen.fault}` });
  return { start: { ...start, notice: "Opening …" }, effects: [{ do: "open", path: chosen.path, to }] };
}

type Asking = NonNullable<Start["asking"]>;

const nextProtocol = ({ protocols }: Start, { protocol }: Asking): string =>
  protocols[(protocols.indexOf(protocol) + 1) % protocols.length] ?? protocol;

/** Initials first, then a label: `KM valve 2`. */
function inAsking(start: Start, asking: Asking, key: Key): StartStep {
  if (key.name === "escape" || key.name === "interrupt" || (key.name === "backspace" && asking.text === "")) {
    return still({ ...start, asking: null });
  }
  if (key.name === "paste")
    return still({ ...start, asking: { ...asking, ...inserted(asking, harmless(key.text)) } });
  if (key.name === "tab")
    return still({ ...start, asking: { ...asking, protocol: nextProtocol(start, asking) } });
  if (key.name === "enter") return made(start, asking);
  const after = edited(asking, key);
  return still(after ? { ...start, asking: { ...asking, ...after }, notice: null } : start);
}

type NewCase = { readonly operator: string; readonly label: string };

/** What was typed for a new case: the first word is the initials, of up to eight letters; else `null`. */
function newCase(text: string): NewCase | null {
  const [operator = "", ...label] = harmless(text).trim().split(" ");
  if (operator === "" || operator.length > 8) return null;
  return { operator: operator.toUpperCase(), label: label.join(" ").slice(0, 60) };
}

/** What Enter would make while the line is open, so that a label is not taken for initials; `null` before any typing. */
export function newCaseSays({ text }: Asking): string | null {
  const meant = newCase(text);
  if (text.trim() === "") return null;
  if (meant === null) return INITIALS_FIRST;
  return `Enter makes: run by ${meant.operator}, ${meant.label === "" ? "without a label" : `label "${meant.label}"`}.`;
}

const INITIALS_FIRST =
  "Type your initials first (up to eight letters), then a label for the case if you like.";

function made(start: Start, { text, protocol }: Asking): StartStep {
  const meant = newCase(text);
  if (meant === null) return still({ ...start, notice: INITIALS_FIRST });
  return { start: { ...start, asking: null }, effects: [{ do: "create", ...meant, protocol }] };
}
