/** Writing a file so that it is either the old one or the new one, whole, whatever happens to the machine. */
import { dirname } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { type Disk, type OpenFile, OWNER_FILE, realDisk } from "./disk.ts";
import { codeOf } from "./fault-words.ts";

/** Milliseconds before each new try of a rename that another program, such as a virus scanner, holds up. */
const RENAME_PAUSES = [10, 20, 40, 80, 160];
const HELD_UP = new Set(["EPERM", "EACCES", "EBUSY"]);

/** A folder that can't be forced to the disk by itself: Windows, and some network file systems. */
const NO_FOLDER_SYNC = new Set(["EINVAL", "ENOTSUP", "EOPNOTSUPP", "ENOSYS", "EBADF"]);

/** Where a file is written before it takes the place of `path`: one fixed name, so that nothing piles up. */
export const temporaryOf = (path: string): string => `${path}.saving`;

/**
 * Writes `parts` one after the other as the new content of `path` and returns once it is on the disk under that
 * name. Throws the system's error with the old content in place, save when only the folder could not be forced to
 * the disk: then the new content is in place and may not outlive a power cut. One write at a time for each path.
 * `beforeReplacing` is done when the new content is on the disk and the old one still in its place.
 */
export async function durableWrite(
  path: string,
  parts: readonly Uint8Array[],
  disk: Disk = realDisk,
  beforeReplacing: () => Promise<void> = async () => {},
): Promise<void> {
  const temporary = temporaryOf(path);
  try {
    await writeForced(disk, temporary, parts);
    await beforeReplacing();
    await renameHeldUp(disk, temporary, path);
  } catch (error) {
    await disk.unlink(temporary).catch(() => undefined);
    throw error;
  }
  await forceFolder(disk, dirname(path));
}

async function writeForced(disk: Disk, path: string, parts: readonly Uint8Array[]): Promise<void> {
  const file = await openNew(disk, path);
  try {
    await writeAll(file, parts);
    await file.sync();
  } finally {
    await file.close();
  }
}

async function writeAll(file: OpenFile, parts: readonly Uint8Array[]): Promise<void> {
  let left = parts.filter(({ length }) => length > 0);
  while (left.length > 0) {
    const { bytesWritten } = await file.writev(left);
    left = without(left, bytesWritten);
  }
}

/** What is left of parts whose first `count` bytes are gone. */
function without(parts: readonly Uint8Array[], count: number): Uint8Array[] {
  const [part, ...others] = parts;
  if (part === undefined) return [];
  return count < part.length ? [part.subarray(count), ...others] : without(others, count - part.length);
}

// Always a file of our own making: one that lay there could be a link to elsewhere, or open to others.
async function openNew(disk: Disk, path: string): Promise<OpenFile> {
  try {
    return await disk.open(path, "wx", OWNER_FILE);
  } catch (error) {
    if (codeOf(error) !== "EEXIST") throw error;
    await disk.unlink(path);
    return disk.open(path, "wx", OWNER_FILE);
  }
}

async function renameHeldUp(disk: Disk, from: string, to: string): Promise<void> {
  for (const wait of RENAME_PAUSES) {
    try {
      return await disk.rename(from, to);
    } catch (error) {
      if (!HELD_UP.has(codeOf(error) ?? "")) throw error;
      await pause(wait);
    }
  }
  return disk.rename(from, to);
}

async function forceFolder(disk: Disk, path: string): Promise<void> {
  if (process.platform === "win32") return;
  const folder = await disk.open(path, "r");
  try {
    await folder.sync();
  } catch (error) {
    if (!NO_FOLDER_SYNC.has(codeOf(error) ?? "")) throw error;
  } finally {
    await folder.close();
  }
}
