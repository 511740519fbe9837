/** Making, opening, holding and adding to a case: the ways to a case file for everything outside this folder. */
import { access, realpath } from "node:fs/promises";
import { dirname } from "node:path";
import { clockTimeOf, type Instant } from "../format/instant.ts";
import { type Outcome, refused, taken } from "../format/outcome.ts";
import type { Protocol } from "../protocol/protocol.ts";
import type { CaseFile } from "../record/case.ts";
import { openedCase } from "../record/opening.ts";
import { aheadOf } from "./ahead.ts";
import { lowCase } from "./case-adapter.ts";
import { codeOf, faultWords, readingFaultWords } from "./fault-words.ts";
import { newCaseId, newCasePath, openFolder } from "./folder.ts";
import { isMarked } from "./keyhole.ts";
import { lastGoodOf } from "./last-good.ts";
import { lockCase, type TakeOver } from "./lock.ts";
import { type ReadCase, readCaseFile } from "./read-case-file.ts";
import { recoverCase, repairCase } from "./recover.ts";
import { plain, type Safe } from "./safe.ts";

/** A case and where it is kept; the path is the real one, so that two names of a case are one case. */
type OpenedCase = { path: string; file: CaseFile };

/** A case that is only looked at. */
export type ReadOnly = OpenedCase & {
  /** What a person has to know where the file is damaged; `null` where it is whole. */
  recovered: string | null;
};

type Opened = {
  file: CaseFile;
  /** The case as it was read, for the keeper to notice what other programs do to its file. */
  asRead: ReadCase | undefined;
  recovered: string | null;
};

/** A case that no other console can write to until it is released. */
export type HeldCase = Opened & {
  path: string;
  /** The same case with what only a copy of it holds, to be saved; `null` where no copy knows more. */
  ahead: CaseFile | null;
  release(): Promise<void>;
};

/** `mayBeTaken`: the lock that is in the way, as a person may decide to take it over. */
export type Held = Outcome<HeldCase> & { readonly mayBeTaken?: TakeOver | null };

type Holding = {
  /** How long a holder is waited for to let go. */
  waitMs?: number;
  /** Whose lock may be taken over; one of an ended process unless it is said otherwise. */
  takeOver?: TakeOver;
  /** Other files that may hold copies of the case: should it be damaged, or should one of them know more. */
  copies?: readonly string[];
  /** What the case is kept in; it lies there as it is without one. */
  safe?: Safe;
};

type NewCase = {
  folder: string;
  /** What people call the case; its id where they call it nothing. */
  label?: string | undefined;
  protocol: Protocol;
  /** Initials of the person who runs the pump. */
  operator: string;
  now: Instant;
  place?: string | undefined;
  /** What it is kept in; it lies there as it is without one. */
  safe?: Safe | undefined;
};

/** How long a one-shot save waits for another to finish. */
const WAIT = 1000;

/** Makes a case with its first entry, on the disk when this returns. Never rejects. */
export async function createCase(asked: NewCase): Promise<Outcome<OpenedCase>> {
  const folder = await openFolder(asked.folder);
  if (!folder.ok) return folder;
  const { safe = plain } = asked;
  if (await isMissing(safe, folder.value)) return refused(ENCRYPTED_SINCE);
  try {
    const id = await unusedId(folder.value, asked.now);
    const path = newCasePath(folder.value, id);
    const file = openedCase({ ...asked, id, label: asked.label || id }, asked.now);
    await lowCase(path, file, { safe }).write();
    return taken({ path: await realpath(path), file });
  } catch (error) {
    return refused(`the case can't be made: ${faultWords(error)}.`);
  }
}

/**
 * Reads a case; a damaged one as far as it can be recovered (from other `copies` too). A sentence says what is wrong
 * with one that can't be read. Never rejects, never touches the file.
 */
export async function openCase(
  path: string,
  copies: readonly string[] = [],
  safe: Safe = plain,
): Promise<Outcome<ReadOnly>> {
  const real = await realPath(path);
  if (!real.ok) return real;
  const read = await readCaseFile(real.value, safe);
  if (read.ok) return taken({ path: real.value, file: read.value.file, recovered: null });
  const found = await recoverCase(real.value, copies, safe);
  return found === null ? read : taken({ path: real.value, file: found.file, recovered: found.told });
}

/**
 * Opens a case to write to it: locked first, then read, so that nothing is out of date. A damaged one is repaired from
 * what is whole. Never rejects.
 */
export async function holdCase(path: string, how: Holding = {}): Promise<Held> {
  const real = await realPath(path);
  if (!real.ok) return real;
  const { copies = [], safe = plain } = how;
  if (await isMissing(safe, dirname(real.value))) return refused(ENCRYPTED_SINCE);
  const lock = await lockCase(real.value, how.waitMs, how.takeOver);
  if (!lock.ok) return lock;
  const opened = await openOrRepair(real.value, copies, safe);
  if (opened.ok) {
    const ahead = await aheadOf(opened.value.file, copies, safe);
    return taken({ ...opened.value, ahead, path: real.value, release: lock.value.release });
  }
  await lock.value.release();
  return opened;
}

/** Where a folder was encrypted after this program began: what it would write could be read by anybody. */
const isMissing = async (safe: Safe, folder: string): Promise<boolean> =>
  !safe.encrypts && (await isMarked(folder));

const ENCRYPTED_SINCE =
  "this folder is encrypted, and its passphrase was not given: leave and start again, which asks for it.";

async function openOrRepair(path: string, copies: readonly string[], safe: Safe): Promise<Outcome<Opened>> {
  const read = await readCaseFile(path, safe);
  if (read.ok) return taken({ file: read.value.file, asRead: read.value, recovered: null });
  const found = await recoverCase(path, copies, safe);
  if (found === null) return read;
  try {
    const { file, told } = await repairCase(path, found, safe);
    return taken({ file, asRead: undefined, recovered: told });
  } catch (error) {
    return refused(`${read.fault.replace(/\.$/, "")}, and it can't be repaired now: ${faultWords(error)}.`);
  }
}

/**
 * Adds to a case in one go: holds it, lets `next` say what it becomes, saves that, and lets it go. The case as it is
 * on the disk when this returns, or a sentence. Never rejects unless `next` throws.
 */
export async function appendTo(
  path: string,
  next: (file: CaseFile, told: string | null) => Outcome<CaseFile>,
  { safe = plain, copies }: Pick<Holding, "safe" | "copies"> = {},
): Promise<Outcome<CaseFile>> {
  const held = await holdCase(path, { waitMs: WAIT, safe, ...(copies && { copies }) });
  if (!held.ok) return held;
  try {
    const becomes = next(held.value.ahead ?? held.value.file, toldOf(held.value));
    return becomes.ok ? await save(held.value, becomes.value, safe) : becomes;
  } finally {
    await held.value.release();
  }
}

/** What a person has to know of a case that was opened: that it was recovered, or that a copy of it knew more. */
export function toldOf({ file, ahead, recovered }: HeldCase): string | null {
  const last = ahead?.entries.at(-1);
  if (ahead === null || last === undefined) return recovered;
  const more = ahead.entries.length - file.entries.length;
  const words = more === 1 ? "One entry was" : `${more} entries were`;
  const taken = `${words} taken in from a copy, up to entry ${last.seq} (${clockTimeOf(last.loggedAt)}): the case's own file did not have ${more === 1 ? "it" : "them"}.`;
  return [recovered, taken].filter(Boolean).join(" ");
}

/** Of a case that is missing but has a last good copy, the place where it was. */
async function realPath(path: string): Promise<Outcome<string>> {
  try {
    return taken(await realpath(path));
  } catch (error) {
    const before = await realpath(lastGoodOf(path)).catch(() => null);
    if (codeOf(error) === "ENOENT" && before !== null) return taken(before.slice(0, -lastGoodOf("").length));
    return refused(`${readingFaultWords(error)}.`);
  }
}

async function save({ path, asRead }: HeldCase, file: CaseFile, safe: Safe): Promise<Outcome<CaseFile>> {
  try {
    await lowCase(path, file, { asRead, safe }).write();
    return taken(file);
  } catch (error) {
    return refused(`not saved: ${faultWords(error)}.`);
  }
}

async function unusedId(folder: string, now: Instant): Promise<string> {
  for (;;) {
    const id = newCaseId(now);
    const taken = await access(newCasePath(folder, id)).then(
      () => true,
      () => false,
    );
    if (!taken) return id;
  }
}
