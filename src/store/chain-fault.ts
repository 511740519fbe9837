/** Where a case as read from its file does not hang together, and what was done to it there. */
import type { CaseFile } from "../record/case.ts";
import type { Entry } from "../record/entry.ts";
import { hashOf, headHash, prevOf } from "./chain.ts";

/** How many removed or added entries the search for an entry's number as it was written looks past. */
const REACH = 24;
/** How many entries are searched for that far: the first fault is what is told, and the rest may be a whole file. */
const SEARCHES = 100;

const BY_HAND = "by hand, outside this program";

/**
 * The first place where the chain is broken, in words; `null` when the case hangs together. What is typed in this
 * session and was not yet read back carries no hash, and is a fault here.
 */
export function chainFault(file: CaseFile): string | null {
  const links = linksOf(file);
  const broken = links.findIndex(({ carried, made }) => carried !== made);
  if (broken < 0) return null;
  if (links.every(({ carried }) => carried === undefined)) {
    return "it carries no hashes: it was not saved by this program, and nothing shows whether it was changed.";
  }
  if (broken === links.length - 1) return lastFault(file);
  return firstFault(file, links);
}

type Numbers = readonly (number | null)[];

/** What an entry (after all of them: the seal) carries of the one before it, and what that one's hash is. */
type Link = { readonly carried: unknown; readonly made: string };

function linksOf(file: CaseFile): Link[] {
  const made = [headHash(file), ...file.entries.map(hashOf)];
  const carried: unknown[] = [...file.entries.map(prevOf), file.seal];
  return made.map((hash, place) => ({ carried: carried[place], made: hash }));
}

function lastFault({ entries, seal }: CaseFile): string {
  const last = `entry ${entries.length}, the last,`;
  if (seal === undefined) return `the seal was taken away ${BY_HAND}: ${last} may have been changed.`;
  const before = entries.at(-2);
  if (before !== undefined && hashOf(before) === seal) return `entry ${entries.length} was added ${BY_HAND}.`;
  return `${last} was changed ${BY_HAND}, or entries after it were removed.`;
}

function firstFault(file: CaseFile, links: readonly Link[]): string {
  const numbers = numbersAsWritten(file, links);
  let shift = 0;
  for (let place = 0; place < numbers.length; place++) {
    const number = numbers[place];
    if (number === undefined || number === null) return runFault(file, numbers, place, shift);
    const skipped = number - (place + 1) - shift;
    if (skipped !== 0) return orderFault(numbers, place, shift);
    shift = number - (place + 1);
  }
  return `the head of the case (id, label, protocol) was changed ${BY_HAND}.`;
}

/**
 * For each entry the number under which its hash is carried anywhere in the file, `null` where it is carried nowhere.
 * Whoever removes or adds an entry has to number the later ones anew, which changes their hashes: so each is tried
 * under the numbers near its own. The last number is that of the entry the seal would stand before.
 */
function numbersAsWritten({ entries, seal }: CaseFile, links: readonly Link[]): Numbers {
  const carried = new Set(links.map((link) => link.carried));
  const numberOf = new Map<string, number>();
  let near = 0;
  let searches = 0;
  const numbers = entries.map((entry, place) => {
    for (const shift of shiftsFrom(near, searches < SEARCHES ? REACH : 0)) {
      const hash = shift === 0 ? (links[place + 1] as Link).made : hashOf(renumbered(entry, shift));
      if (!carried.has(hash)) continue;
      near = shift;
      numberOf.set(hash, entry.seq + shift);
      return entry.seq + shift;
    }
    searches += 1;
    return null;
  });
  const sealed = numberOf.get(seal ?? "");
  return [...numbers, sealed === undefined ? null : sealed + 1];
}

function* shiftsFrom(near: number, reach: number): Generator<number> {
  yield near;
  if (near !== 0) yield 0;
  for (let step = 1; step <= reach; step++) {
    yield near + step;
    yield near - step;
  }
}

const renumbered = (entry: Entry, shift: number): Entry => ({
  ...entry,
  id: `e${entry.seq + shift}`,
  seq: entry.seq + shift,
});

/** Entries from `place` on that nothing vouches for: changed, added, or left without a follower that was removed. */
function runFault({ seal }: CaseFile, numbers: Numbers, place: number, shift: number): string {
  const next = numbers.findIndex((number, at) => at > place && number !== null);
  if (next < 0) {
    const what = seal === undefined ? "was changed or added" : "was changed, added or removed";
    return `from entry ${place + 1} on, at least one entry ${what} ${BY_HAND}.`;
  }
  const those = entriesNamed(place + 1, next);
  const skipped = (numbers[next] as number) - (next + 1) - shift;
  if (skipped === place - next) return `${those} added ${BY_HAND}.`;
  if (skipped === 0) return `${those} changed ${BY_HAND}${next - place > 1 ? ", at least one of them" : ""}.`;
  if (skipped > 0) {
    const gone = entriesNamed(next + shift + 1, next + shift + skipped);
    return `${gone} removed ${BY_HAND}, after what is now entry ${next}.`;
  }
  return `${those} changed or added ${BY_HAND}.`;
}

/** The entry at `place` is whole, and was written under another number than its place says. */
function orderFault(numbers: Numbers, place: number, shift: number): string {
  const number = numbers[place] as number;
  const expected = place + 1 + shift;
  if (number < expected)
    return `entry ${place + 1} was added ${BY_HAND}: it is entry ${number} once more, or was moved.`;
  const now = numbers.indexOf(expected);
  if (now >= 0 && now < numbers.length - 1) {
    return number === expected + 1
      ? `entry ${expected} was moved ${BY_HAND}: it stands as entry ${now + 1} now.`
      : `entry ${number} was moved ${BY_HAND}: it stands as entry ${place + 1} now.`;
  }
  return `${entriesNamed(expected, number - 1)} removed ${BY_HAND}, before what is now entry ${place + 1}.`;
}

/** `entry 5 was`, `entries 5 to 7 were` */
const entriesNamed = (from: number, to: number): string =>
  from >= to ? `entry ${from} was` : `entries ${from} to ${to} were`;
