/** The keeper: saves the newest state of a case, one save at a time, and tries again until it is on the disk. */
import type { CaseFile } from "../record/case.ts";
import { type AdapterTools, lowCase } from "./case-adapter.ts";
import { faultWords } from "./fault-words.ts";
import { waiting, within } from "./waiting.ts";

export type Keeper = {
  /** Takes the newest state; the save follows by itself. Never throws. */
  keep(file: CaseFile): void;
  /**
   * Tries at once to save what is not saved yet; whether everything kept so far is on the disk. A disk that does not
   * answer is waited for no longer than `withinMs`. Never rejects.
   */
  settle(withinMs?: number): Promise<boolean>;
  /** Tries a last time and stops trying; what came of it. Never rejects. */
  close(withinMs?: number): Promise<Closing>;
};

export type Closing = {
  /** How many entries are not on the disk. */
  readonly unsaved: number;
  /** Whether the disk still owes an answer: then the process can't end in the ordinary way. */
  readonly hanging: boolean;
};

export type KeeperTools = AdapterTools & {
  path: string;
  /** The case as it is on the disk now. */
  file: CaseFile;
  /** Called with the highest sequence number that is on the disk, once it has been forced there. */
  onSaved(seq: number): void;
  /** Called after each save that failed, or when the disk does not answer, with the reason in words without a full stop. */
  onFault(words: string): void;
  /** Waits so many milliseconds, or less when `signal` ends it. */
  wait?(ms: number, signal: AbortSignal): Promise<void>;
  /** Milliseconds without an answer after which a save is told not to come forward. */
  hangingAfter?: number;
};

const FIRST_PAUSE = 100;
const LONGEST_PAUSE = 3000;
const HANGING_AFTER = 3000;
const PATIENCE = 5000;

/** Starts keeping a case; nothing is written before the first `save`. */
export function keepCase(tools: KeeperTools): Keeper {
  const { path, file, onSaved, onFault, wait = waiting, hangingAfter = HANGING_AFTER, ...adapter } = tools;
  const low = lowCase(path, file, adapter);
  let saved = file;
  let wanted = file;
  let saving: Promise<boolean> | undefined;
  let trying = Promise.resolve();
  let busy = false;
  let closed = false;
  let nap = new AbortController();

  const save = async (): Promise<boolean> => {
    const newest = wanted;
    const slow = setTimeout(() => tell(() => onFault("the disk does not answer")), hangingAfter);
    try {
      low.data = newest;
      await low.write();
    } catch (error) {
      tell(() => onFault(faultWords(error)));
      return false;
    } finally {
      clearTimeout(slow);
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

  const settled = async (): Promise<boolean> => {
    // A save under way may have begun before the newest state.
    await saving;
    while (saved !== wanted) {
      if (!(await saveOnce())) return false;
    }
    return true;
  };
  const settle = (withinMs = PATIENCE): Promise<boolean> => within(withinMs, settled(), false);

  return {
    keep(newest) {
      if (closed) return tell(() => onFault("the case has been let go"));
      wanted = newest;
      if (!busy) trying = untilSaved();
    },
    settle,
    async close(withinMs) {
      await settle(withinMs);
      closed = true;
      nap.abort();
      if (saving === undefined) await trying;
      return { unsaved: wanted.entries.length - saved.entries.length, hanging: saving !== undefined };
    },
  };
}

const pauseAfter = (failures: number): number => Math.min(FIRST_PAUSE * 2 ** (failures - 1), LONGEST_PAUSE);

/** In a turn of its own, so that a fault in a listener is seen as its own and never stops the saving. */
const tell = (listener: () => void): void => queueMicrotask(listener);
