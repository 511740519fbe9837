/** Encrypting a folder of cases, and the way back: case by case, each of them readable at any moment of it. */
import { realpath } from "node:fs/promises";
import { basename } from "node:path";
import { type Outcome, refused, taken } from "../format/outcome.ts";
import { indexOf } from "./case-index.ts";
import { durableWrite, temporaryOf } from "./durable-write.ts";
import { faultWords, isDamage, refusal } from "./fault-words.ts";
import { fewAtOnce } from "./few-at-once.ts";
import { type CaseFiles, casesWithFiles } from "./folder-files.ts";
import { markerOf } from "./keyhole.ts";
import { isLocked } from "./lock.ts";
import { bytesOnDisk } from "./read-case-file.ts";
import { type Left, rewriteCase, unlinkIfThere } from "./rewrite-case.ts";
import { isEncrypted, plain, type Safe } from "./safe.ts";

/** What came of it. */
export type Rewriting = {
  /** How many files were rewritten. */
  readonly files: number;
  readonly left: readonly Left[];
  /** Whether all was dealt with: not when it was stopped, or somebody opened a case meanwhile. */
  readonly isDone: boolean;
};

export type Watching = {
  /** Hears how many of the cases have been dealt with. */
  readonly onProgress?: (done: number, all: number) => void;
  /** Ends it between two cases. */
  readonly signal?: AbortSignal;
};

/**
 * Encrypts every case of a folder and what is kept beside it. The marker comes first, so that nothing more is written
 * there as it is. Refused, with nothing changed, while a case is held. Ended half way, it goes on when it is called
 * again. Never rejects.
 */
export const encryptFolder = (
  folder: string,
  safe: Safe,
  watching: Watching = {},
): Promise<Outcome<Rewriting>> =>
  whereNobodyWrites(folder, async (real, cases) => {
    await mark(real, safe);
    await dropIndex(real);
    return rewriteAll(cases, safe, safe, watching);
  });

/** The way back, with the marker last. Refused, and ended half way, in the same way. Never rejects. */
export const decryptFolder = (
  folder: string,
  safe: Safe,
  watching: Watching = {},
): Promise<Outcome<Rewriting>> =>
  whereNobodyWrites(folder, async (real, cases) => {
    const rewriting = await rewriteAll(cases, safe, plain, watching);
    if (!rewriting.isDone) return rewriting;
    await dropIndex(real);
    await unlinkIfThere(markerOf(real));
    return rewriting;
  });

async function whereNobodyWrites(
  folder: string,
  work: (real: string, cases: readonly CaseFiles[]) => Promise<Rewriting>,
): Promise<Outcome<Rewriting>> {
  try {
    const real = await realpath(folder);
    const cases = await casesWithFiles(real);
    const held = await fewAtOnce(cases, async ({ path }) => ((await isLocked(path)) ? [path] : []));
    const [first] = held.flat();
    if (first !== undefined)
      return refused(
        `nothing was changed, because ${basename(first)} is open in a console: leave it there first.`,
      );
    return taken(await work(real, cases));
  } catch (error) {
    return refused(
      `it was not finished: ${faultWords(error)}. Every case can still be read; run it again when that is put right.`,
    );
  }
}

/** A marker that is damaged is written anew: then the passphrase was tried on a case. Throws a refusal for another's. */
async function mark(folder: string, safe: Safe): Promise<void> {
  const path = markerOf(folder);
  const marker = await bytesOnDisk(path).then(
    ({ bytes }) => bytes,
    () => null,
  );
  if (marker !== null && isEncrypted(marker)) {
    const fault = await safe.take(marker).then(
      () => null,
      (error: unknown) => error,
    );
    if (fault === null) return;
    if (!isDamage(fault)) throw refusal("another passphrase has been chosen for this folder meanwhile");
  }
  await durableWrite(path, safe.put([]));
}

/** The cases are all there: the next long list makes the index anew. */
async function dropIndex(folder: string): Promise<void> {
  const index = indexOf(folder);
  for (const path of [index, temporaryOf(index)]) await unlinkIfThere(path);
}

async function rewriteAll(
  cases: readonly CaseFiles[],
  from: Safe,
  to: Safe,
  { onProgress, signal }: Watching,
): Promise<Rewriting> {
  const left: Left[] = [];
  let [files, isDone] = [0, true];
  for (const [place, one] of cases.entries()) {
    if (signal?.aborted) return { files, left, isDone: false };
    const rewritten = await rewriteCase(one, from, to);
    files += rewritten.files;
    left.push(...rewritten.left);
    if (rewritten.isHeld) isDone = false;
    onProgress?.(place + 1, cases.length);
  }
  return { files, left, isDone };
}
