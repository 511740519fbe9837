/** Making, opening, holding and adding to a case: the ways to a case file for everything outside this folder. */
import { access, realpath } from "node:fs/promises";
import { type Instant, toIso } from "../format/instant.ts";
import { type Outcome, refused, taken } from "../format/outcome.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { CASE_FORMAT, CASE_VERSION, type CaseFile } from "../record/case.ts";
import { lowCase } from "./case-adapter.ts";
import { faultWords, readingFaultWords } from "./fault-words.ts";
import { newCaseId, newCasePath, openFolder } from "./folder.ts";
import { lockCase } from "./lock.ts";
import { readCaseFile } from "./read-case-file.ts";

/** A case and where it is kept; the path is the real one, so that two names of a case are one case. */
export type OpenedCase = { path: string; file: CaseFile };

/** A case that no other console can write to until it is released. */
export type HeldCase = OpenedCase & { release(): Promise<void> };

export type NewCase = {
  folder: string;
  /** What people call the case; its id where they call it nothing. */
  label?: string | undefined;
  protocol: Protocol;
  /** Initials of the person who runs the pump. */
  operator: string;
  now: Instant;
  place?: string | undefined;
};

/** How long a one-shot save waits for another to finish. */
const WAIT = 1000;

/** Makes a case with its first entry, on the disk when this returns. Never rejects. */
export async function createCase(asked: NewCase): Promise<Outcome<OpenedCase>> {
  const folder = await openFolder(asked.folder);
  if (!folder.ok) return folder;
  try {
    const id = await unusedId(folder.value, asked.now);
    const path = newCasePath(folder.value, id);
    const file = firstState(id, asked);
    await lowCase(path, file).write();
    return taken({ path: await realpath(path), file });
  } catch (error) {
    return refused(`the case can't be made: ${faultWords(error)}.`);
  }
}

/** Reads a case; a sentence says what is wrong with one that can't be read. Never rejects, never touches the file. */
export async function openCase(path: string): Promise<Outcome<OpenedCase>> {
  const real = await realPath(path);
  return real.ok ? openReal(real.value) : real;
}

/** Opens a case to write to it: locked first, then read, so that nothing is out of date. Never rejects. */
export async function holdCase(path: string, waitMs = 0): Promise<Outcome<HeldCase>> {
  const real = await realPath(path);
  if (!real.ok) return real;
  const lock = await lockCase(real.value, waitMs);
  if (!lock.ok) return lock;
  const opened = await openReal(real.value);
  if (opened.ok) return taken({ ...opened.value, release: lock.value.release });
  await lock.value.release();
  return opened;
}

/**
 * Adds to a case in one go: holds it, lets `next` say what it becomes, saves that, and lets it go. The case as it is
 * on the disk when this returns, or a sentence. Never rejects unless `next` throws.
 */
export async function appendTo(
  path: string,
  next: (file: CaseFile) => Outcome<CaseFile>,
): Promise<Outcome<CaseFile>> {
  const held = await holdCase(path, WAIT);
  if (!held.ok) return held;
  try {
    const becomes = next(held.value.file);
    return becomes.ok ? await save(held.value.path, becomes.value) : becomes;
  } finally {
    await held.value.release();
  }
}

async function realPath(path: string): Promise<Outcome<string>> {
  try {
    return taken(await realpath(path));
  } catch (error) {
    return refused(`${readingFaultWords(error)}.`);
  }
}

async function openReal(path: string): Promise<Outcome<OpenedCase>> {
  const read = await readCaseFile(path);
  return read.ok ? taken({ path, file: read.value }) : read;
}

async function save(path: string, file: CaseFile): Promise<Outcome<CaseFile>> {
  try {
    await lowCase(path, file).write();
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

function firstState(id: string, { label, protocol, operator, now, place }: NewCase): CaseFile {
  const at = toIso(now);
  const opened = {
    id: "e1",
    seq: 1,
    at,
    loggedAt: at,
    by: operator,
    typed: "",
    kind: "opened" as const,
    operator,
  };
  return {
    format: CASE_FORMAT,
    version: CASE_VERSION,
    id,
    label: label || id,
    protocol,
    entries: [place === undefined ? opened : { ...opened, place }],
  };
}
