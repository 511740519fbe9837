/** The folder where cases live: where it is, what its files are called, and keeping it tidy. */

import { randomInt } from "node:crypto";
import { readdirSync } from "node:fs";
import { mkdir, stat, unlink } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import envPaths from "env-paths";
import { MINUTE } from "../format/duration.ts";
import { type Instant, toIso } from "../format/instant.ts";
import { type Outcome, refused, taken } from "../format/outcome.ts";
import { OWNER_FOLDER } from "./disk.ts";
import { faultWords } from "./fault-words.ts";
import { isLocked } from "./lock.ts";

const CASE_NAME = /^case-([0-9]{8}-[a-z]{6})\.json$/;
/** What a writer or a lock taker that was killed can leave behind; the first group is the case's name. */
const LEFT_OVER =
  /^(case-[0-9]{8}-[a-z]{6}\.json)((\.before|\.half-typed|\.(damaged|replaced)-[0-9]+)?\.saving|\.lock(\.(new|after)-[0-9a-f]{16})+)$/;

/** The folder asked for, else that of the environment, else the platform's own for this user's data. */
export const caseFolder = (asked?: string, environment: NodeJS.ProcessEnv = process.env): string =>
  resolve(asked || environment.PUMPSIDE_DIR || envPaths("pumpside", { suffix: "" }).data);

/** Makes the folder, for its owner only, where it is not there yet, and sweeps it. Never rejects. */
export async function openFolder(folder: string): Promise<Outcome<string>> {
  try {
    const names = namesIn(folder);
    if (names === null) await makeFolder(folder);
    await sweep(folder, names ?? readdirSync(folder));
    return taken(folder);
  } catch (error) {
    return refused(`the folder for cases can't be used: ${faultWords(error)}.`);
  }
}

/**
 * Makes a folder, and those it lies in, for their owner only. Node's own recursive way never ends where a folder that is
 * there can hold none, as in /proc. Throws the system's error.
 */
export async function makeFolder(folder: string): Promise<void> {
  if (await isFolder(folder)) return;
  const parent = dirname(folder);
  if (parent !== folder) await makeFolder(parent);
  try {
    await mkdir(folder, OWNER_FOLDER);
  } catch (error) {
    // Another console may have made it in the same moment.
    if (!(await isFolder(folder))) throw error;
  }
}

const isFolder = (path: string): Promise<boolean> =>
  stat(path).then(
    (found) => found.isDirectory(),
    () => false,
  );

/** `20260304-abcdef`: the day and six letters that say nothing about anybody. */
export function newCaseId(now: Instant): string {
  const letters = Array.from({ length: 6 }, () => String.fromCharCode(97 + randomInt(26))).join("");
  return `${toIso(now).slice(0, 10).replaceAll("-", "")}-${letters}`;
}

/** Where a case is kept. Its name never holds the label or anything about a patient. */
export const newCasePath = (folder: string, id: string): string => join(folder, `case-${id}.json`);

/** The id in the name of a case file; `null` for any other name. */
export const idInName = (path: string): string | null => CASE_NAME.exec(basename(path))?.[1] ?? null;

/**
 * What lies in a folder; `null` where there is no such folder, or none that can be read. At once: before the first screen
 * nothing else is to be done, and Node's promises of files take longer to load than a folder to read.
 */
export function namesIn(folder: string): string[] | null {
  try {
    return readdirSync(folder);
  } catch {
    return null;
  }
}

/** Removes what a killed writer left some time ago beside a case that nobody holds. A folder that can't be swept is no fault. */
async function sweep(folder: string, names: readonly string[]): Promise<void> {
  for (const name of names) {
    const found = LEFT_OVER.exec(name);
    if (found === null) continue;
    const path = join(folder, name);
    const ofCase = join(folder, found[1] as string);
    if ((await isYoung(path)) || (await isLocked(ofCase))) continue;
    await unlink(path).catch(() => undefined);
  }
}

// A case is saved, and a lock taken over, in far less than this.
const isYoung = (path: string): Promise<boolean> =>
  stat(path).then(
    ({ mtimeMs }) => Date.now() - mtimeMs < MINUTE,
    () => true,
  );
