/** Noticing that another program has put something else in the place of a case since it was last read or written. */
import type { CaseFile } from "../record/case.ts";
import { isStateOf } from "./case-bytes.ts";
import type { Disk, Stat } from "./disk.ts";
import { codeOf } from "./fault-words.ts";
import type { Safe } from "./safe.ts";

/** A state of the file that is ours: how the disk describes it, and the case in it. */
export type Known = { readonly stat: Stat; readonly file: CaseFile };

type FileWatch = {
  /** What lies at the path now: a state of ours, something of another program, or nothing. Throws the system's error. */
  look(): Promise<"ours" | "foreign" | "gone">;
  /** A state that is about to take the place; until `settled`, the one before it is ours too. */
  expect(next: Known): void;
  /** The last state expected is in its place. */
  settled(): void;
};

/** Watches from a first state that is known; without one, what lies there at the first look counts as ours. */
export function watchFile(path: string, disk: Disk, safe: Safe, first?: Known): FileWatch {
  let known: Known[] = first ? [first] : [];
  return {
    async look() {
      if (known.length === 0) return "ours";
      const stat = await statOf(path, disk);
      if (stat === null) return "gone";
      if (known.some((one) => sameStat(one.stat, stat))) return "ours";
      // Some shared folders tell another time or number for a file a moment later: the content decides.
      const content = await safe.take(await disk.readFile(path)).catch(() => null);
      if (content === null) return "foreign";
      return known.some(({ file }) => isStateOf(content, file)) ? "ours" : "foreign";
    },
    expect(next) {
      known = [...known.slice(-1), next];
    },
    settled() {
      known = known.slice(-1);
    },
  };
}

async function statOf(path: string, disk: Disk): Promise<Stat | null> {
  try {
    return await disk.stat(path);
  } catch (error) {
    if (codeOf(error) === "ENOENT") return null;
    throw error;
  }
}

const sameStat = (one: Stat, other: Stat): boolean =>
  one.ino === other.ino && one.size === other.size && one.mtimeMs === other.mtimeMs;
