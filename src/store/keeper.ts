/** The keeper: saves the newest state of a case, one save at a time, and tries again until it is on the disk. */
import type { CaseFile } from "../record/case.ts";
import { lowCase } from "./case-adapter.ts";
import type { Disk } from "./durable-write.ts";
import { faultWords } from "./fault-words.ts";

export type Keeper = {
  /** Takes the newest state; the save follows by itself. Never throws. */
  keep(file: CaseFile): void;
  /** Tries at once to save what is not saved yet; whether everything kept so far is on the disk. Never rejects. */
  settle(): Promise<boolean>;
  /** Tries a last time and stops trying. Never rejects. */
  close(): Promise<void>;
};

export type KeeperTools = {
  path: string;
  /** The case as it is on the disk now. */
  file: CaseFile;
  /** Called with the highest sequence number that is on the disk, once it has been forced there. */
  onSaved(seq: number): void;
  /** Called after each save that failed, with the reason in words without a full stop. */
  onFault(words: string): void;
  disk?: Disk;
  /** Waits so many milliseconds, or less when `signal` ends it. */
  wait?(ms: number, signal: AbortSignal): Promise<void>;
};

const FIRST_PAUSE = 100;
const LONGEST_PAUSE = 3000;

export function keepCase({ path, file, onSaved, onFault, disk, wait = waiting }: KeeperTools): Keeper {
  const low = lowCase(path, file, disk);
  let saved = file;
  let wanted = file;
  let saving: Promise<boolean> | undefined;
  let trying = Promise.resolve();
  let busy = false;
  let closed = false;
  let nap = new AbortController();

  const save = async (): Promise<boolean> => {
    const newest = wanted;
    try {
      low.data = newest;
      await low.write();
    } catch (error) {
      tell(() => onFault(faultWords(error)));
      return false;
    }
    saved = newest;
    nap.abort();
    tell(() => onSaved(newest.entries.length));
    return true;
  };

  const saveOnce = (): Promise<boolean> => {
    saving ??= save().finally(() => {
      saving = undefined;
    });
    return saving;
  };

  const untilSaved = async (): Promise<void> => {
    busy = true;
    for (let failures = 0; saved !== wanted && !closed; ) {
      failures = (await saveOnce()) ? 0 : failures + 1;
      if (failures === 0 || closed) continue;
      nap = new AbortController();
      await wait(pauseAfter(failures), nap.signal);
    }
    busy = false;
  };

  const settle = async (): Promise<boolean> => {
    // A save under way may have begun before the newest state.
    await saving;
    while (saved !== wanted) {
      if (!(await saveOnce())) return false;
    }
    return true;
  };

  return {
    keep(newest) {
      if (closed) return tell(() => onFault("the case has been let go"));
      wanted = newest;
      if (!busy) trying = untilSaved();
    },
    settle,
    async close() {
      await settle();
      closed = true;
      nap.abort();
      await trying;
    },
  };
}

const pauseAfter = (failures: number): number => Math.min(FIRST_PAUSE * 2 ** (failures - 1), LONGEST_PAUSE);

/** In a turn of its own, so that a fault in a listener is seen as its own and never stops the saving. */
const tell = (listener: () => void): void => queueMicrotask(listener);

const waiting = (ms: number, signal: AbortSignal): Promise<void> =>
  new Promise((resolve) => {
    const timer = setTimeout(resolve, ms);
    signal.addEventListener(
      "abort",
      () => {
        clearTimeout(timer);
        resolve();
      },
      { once: true },
    );
  });
