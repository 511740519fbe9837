/** The lock: a case has one writer at a time, and a writer that died is found out. */
import { readFileSync, unlinkSync } from "node:fs";
import { link, open, readFile, rename, unlink } from "node:fs/promises";
import { setTimeout as pause } from "node:timers/promises";
import { clockTimeOf, dayOf, fromIso } from "../format/instant.ts";
import { NO_LINKS, OWNER_FILE } from "./disk.ts";
import { codeOf, faultWords } from "./fault-words.ts";
import { type Holder, holderIn, isGone, isHere, thisHolder } from "./lock-holder.ts";

export type Lock = {
  /** Lets the case go. Never rejects. */
  release(): Promise<void>;
};

/** The lock's file, beside the case. */
export const lockOf = (path: string): string => `${path}.lock`;

const UNREADABLE = "unreadable";
/** Which locks of others may be taken over: those of ended processes, or also those of another computer. */
export type TakeOver = "none" | "ended" | "elsewhere";

/** `mayBeTaken`: what a person may decide to take over, and how it has to be asked for; `null` where nobody may. */
type LockRefused = {
  readonly ok: false;
  readonly fault: string;
  readonly mayBeTaken: TakeOver | null;
};

const LOOKS = 10;
const BETWEEN_LOOKS = 20;

const held = new Map<string, Holder>();

/**
 * Locks the case at `path` for this process, or says in a sentence who holds it. Of the locks of others only those are
 * taken over that `takeOver` allows, and never one whose process runs on this computer. Waits up to `waitMs` for a holder
 * to let go. Never rejects.
 */
export async function lockCase(
  path: string,
  waitMs = 0,
  takeOver: TakeOver = "ended",
): Promise<{ readonly ok: true; readonly value: Lock } | LockRefused> {
  const file = lockOf(path);
  const mine = thisHolder();
  try {
    for (let waited = 0; ; waited += BETWEEN_LOOKS) {
      const other = await take(file, mine, takeOver);
      if (other === null) return { ok: true, value: lockHeld(file, mine) };
      if (waited >= waitMs) return { ok: false, ...heldBy(other) };
      await pause(BETWEEN_LOOKS);
    }
  } catch (error) {
    return { ok: false, fault: `the case can't be locked: ${faultWords(error)}.`, mayBeTaken: null };
  }
}

/** Whether somebody may hold the case at `path` now. Never rejects. */
export async function isLocked(path: string): Promise<boolean> {
  const found = await look(lockOf(path)).catch(() => UNREADABLE);
  return found === UNREADABLE || (found !== null && !isGone(found as Holder));
}

/**
 * Takes a lock file, or returns who has it. A dead holder's lock is replaced only by whoever holds the claim to it: a
 * lock by itself, named after the dead one's token. Of two that find the same dead lock, the second finds the claim
 * held or, later, the lock no longer the dead one.
 */
async function take(
  file: string,
  mine: Holder,
  takeOver: TakeOver,
): Promise<Holder | typeof UNREADABLE | null> {
  for (;;) {
    if (await place(file, mine)) return null;
    const found = await look(file);
    if (found === null) continue;
    if (found === UNREADABLE || !mayTake(found, takeOver)) return found;
    const claim = `${file}.after-${found.token}`;
    const other = await take(claim, mine, "ended");
    if (other !== null) return other;
    try {
      const still = await look(file);
      if (still !== null && still !== UNREADABLE && still.token === found.token) {
        await replace(file, mine);
        return null;
      }
    } finally {
      await remove(claim, mine);
    }
  }
}

const mayTake = (found: Holder, takeOver: TakeOver): boolean =>
  isGone(found) ? takeOver !== "none" : takeOver === "elsewhere" && !isHere(found);

/** Puts a lock with its content in one step, where none is; `false` where there is one. */
async function place(file: string, mine: Holder): Promise<boolean> {
  const ready = await writeNew(`${file}.new-${mine.token}`, mine);
  try {
    await link(ready, file);
    return true;
  } catch (error) {
    if (codeOf(error) === "EEXIST") return false;
    if (!NO_LINKS.has(codeOf(error) ?? "")) throw error;
    return await placeWithoutLinks(file, mine);
  } finally {
    await unlink(ready);
  }
}

async function placeWithoutLinks(file: string, mine: Holder): Promise<boolean> {
  try {
    await writeNew(file, mine);
    return true;
  } catch (error) {
    if (codeOf(error) === "EEXIST") return false;
    throw error;
  }
}

const replace = async (file: string, mine: Holder): Promise<void> =>
  rename(await writeNew(`${file}.new-${mine.token}`, mine), file);

// Forced to the disk, so that a power cut does not leave a lock that says nothing.
async function writeNew(file: string, mine: Holder): Promise<string> {
  const handle = await open(file, "wx", OWNER_FILE);
  try {
    await handle.writeFile(`${JSON.stringify(mine)}\n`);
    await handle.sync();
    return file;
  } catch (error) {
    await unlink(file).catch(() => undefined);
    throw error;
  } finally {
    await handle.close();
  }
}

/** The holder written in a lock file, `null` where there is no file. One that is just being written is waited for. */
async function look(file: string): Promise<Holder | typeof UNREADABLE | null> {
  for (let looks = 0; looks < LOOKS; looks++) {
    const text = await readFile(file, "utf8").catch((error: unknown) => {
      if (codeOf(error) === "ENOENT") return null;
      throw error;
    });
    if (text === null) return null;
    const found = holderIn(text);
    if (found !== null) return found;
    await pause(BETWEEN_LOOKS);
  }
  return UNREADABLE;
}

async function remove(file: string, mine: Holder): Promise<void> {
  const found = await look(file).catch(() => null);
  if (found !== null && found !== UNREADABLE && found.token === mine.token)
    await unlink(file).catch(() => undefined);
}

function lockHeld(file: string, mine: Holder): Lock {
  if (held.size === 0) process.on("exit", releaseAll);
  held.set(file, mine);
  return {
    async release() {
      if (!held.delete(file)) return;
      if (held.size === 0) process.off("exit", releaseAll);
      await remove(file, mine);
    },
  };
}

// The last thing a process does can't wait for anything.
function releaseAll(): void {
  for (const [file, { token }] of held) {
    try {
      if (holderIn(readFileSync(file, "utf8"))?.token === token) unlinkSync(file);
    } catch {
      // It is gone already, or is found to be stale the next time.
    }
  }
}

function heldBy(holder: Holder | typeof UNREADABLE): Omit<LockRefused, "ok"> {
  if (holder === UNREADABLE) {
    const fault =
      'a lock that can\'t be read lies beside the case: if no console has it open, remove the file that ends in ".lock".';
    return { fault, mayBeTaken: null };
  }
  const { pid, host, since } = holder;
  const when = fromIso(since) === null ? since : `${clockTimeOf(since)} on ${dayOf(since)}`;
  const who = `process ${pid} on ${host}, since ${when}`;
  if (isGone(holder)) {
    return {
      fault: `a console that had the case open ended without letting it go (${who}).`,
      mayBeTaken: "ended",
    };
  }
  const open = `another console has the case open (${who}): leave it there first`;
  if (isHere(holder)) return { fault: `${open}.`, mayBeTaken: null };
  return {
    fault: `${open}, or, if that computer is off, remove the file beside the case that ends in ".lock".`,
    mayBeTaken: "elsewhere",
  };
}
