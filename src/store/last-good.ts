/** What is kept beside a case: the state before the last save, and what a repair or a save found in its place. */
import { type Disk, NO_LINKS, ONLY_NEW, realDisk } from "./disk.ts";
import { codeOf } from "./fault-words.ts";

/** The state of a case before its last save. */
export const lastGoodOf = (path: string): string => `${path}.before`;

/**
 * Keeps the present file as the last good copy; the next save puts a new file in its place, so a second name for it is
 * all it takes. A copy that can't be kept never keeps anything from being saved. Never rejects.
 */
export async function keepLastGood(path: string, disk: Disk = realDisk): Promise<void> {
  const before = lastGoodOf(path);
  try {
    await disk.unlink(before).catch((error: unknown) => unless(error, "ENOENT"));
    await disk.link(path, before);
  } catch (error) {
    if (NO_LINKS.has(codeOf(error) ?? "")) await disk.copyFile(path, before).catch(() => undefined);
  }
}

/**
 * Gives what lies at `path` a second name that says what it is, `….damaged-1`; never one that is in use. The name.
 * Throws the system's error.
 */
export async function keepAside(path: string, word: string, disk: Disk = realDisk): Promise<string> {
  for (let number = 1; ; number++) {
    const name = `${path}.${word}-${number}`;
    try {
      await secondName(path, name, disk);
      return name;
    } catch (error) {
      unless(error, "EEXIST");
    }
  }
}

async function secondName(path: string, name: string, disk: Disk): Promise<void> {
  try {
    await disk.link(path, name);
  } catch (error) {
    if (!NO_LINKS.has(codeOf(error) ?? "")) throw error;
    await disk.copyFile(path, name, ONLY_NEW);
  }
}

function unless(error: unknown, code: string): void {
  if (codeOf(error) !== code) throw error;
}
