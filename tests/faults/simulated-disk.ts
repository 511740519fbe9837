// A disk that loses at a power cut what was not forced: contents not synced, and names whose folder was not synced.

import type { Disk, OpenFile } from "../../src/store/disk.ts";

type File = { ino: number; now: Buffer; forced: Buffer };
/** A change of names that is not on the disk for certain yet: `undefined` takes the name away. */
type Rename = { changes: [name: string, file: File | undefined][] };

/** What a cut makes of what was not forced: what was written last survives, or not, or in a part. */
export type Chance = () => number;

const missing = (): Error => Object.assign(new Error("ENOENT"), { code: "ENOENT" });
const present = (): Error => Object.assign(new Error("EEXIST"), { code: "EEXIST" });

/** A disk in memory. `beforeStep` is called before each thing that changes it: there the power may go. */
export function simulatedDisk(beforeStep: () => void) {
  const names = new Map<string, File>();
  const forcedNames = new Map<string, File>();
  let pending: Rename[] = [];
  let inodes = 0;
  const change = (...changes: Rename["changes"]): void => {
    for (const [name, file] of changes) file === undefined ? names.delete(name) : names.set(name, file);
    pending.push({ changes });
  };
  const at = (path: string): File => {
    const file = names.get(path);
    if (file === undefined) throw missing();
    return file;
  };

  const disk: Disk = {
    async open(path, flags): Promise<OpenFile> {
      beforeStep();
      if (flags === "r") return folder();
      if (names.has(path)) throw present();
      inodes += 1;
      const file: File = { ino: inodes, now: Buffer.of(), forced: Buffer.of() };
      change([path, file]);
      return opened(file);
    },
    async rename(from, to) {
      beforeStep();
      change([from, undefined], [to, at(from)]);
    },
    async unlink(path) {
      beforeStep();
      at(path);
      change([path, undefined]);
    },
    async link(path, name) {
      beforeStep();
      if (names.has(name)) throw present();
      change([name, at(path)]);
    },
    copyFile: () => Promise.reject(missing()),
    readFile: async (path) => at(path).now,
    stat: async (path) => {
      const { ino, now } = at(path);
      return { ino, size: now.length, mtimeMs: ino };
    },
  };

  const folder = (): OpenFile => ({
    writev: () => Promise.reject(missing()),
    async sync() {
      beforeStep();
      for (const { changes } of pending) apply(forcedNames, changes);
      pending = [];
    },
    close: async () => {},
  });

  const opened = (file: File): OpenFile => ({
    // Never all at once, as a disk that is nearly full.
    async writev(parts) {
      beforeStep();
      const all = Buffer.concat(parts);
      const taken = all.subarray(0, Math.ceil((all.length * 2) / 3));
      file.now = Buffer.concat([file.now, taken]);
      return { bytesWritten: taken.length };
    },
    async sync() {
      beforeStep();
      file.forced = file.now;
    },
    close: async () => {},
  });

  return {
    disk,
    /**
     * What would be found after a cut now: of the changes of names that were not forced some happened, in any order; of content
     * that was not forced a part is there, or nothing, or what lay on the disk before.
     */
    restart(chance: Chance): Map<string, Buffer> {
      const found = new Map(forcedNames);
      const survivors = pending.filter(() => chance() < 0.5).sort(() => chance() - 0.5);
      for (const { changes } of survivors) apply(found, changes);
      return new Map([...found].map(([name, file]) => [name, contentAfterCut(file, chance)]));
    },
  };
}

function apply(names: Map<string, File>, changes: Rename["changes"]): void {
  for (const [name, file] of changes) file === undefined ? names.delete(name) : names.set(name, file);
}

function contentAfterCut({ now, forced }: File, chance: Chance): Buffer {
  if (now === forced) return forced;
  const way = chance();
  if (way < 0.25) return now;
  if (way < 0.5) return forced;
  const cut = now.subarray(0, Math.floor(now.length * chance()));
  return way < 0.75 ? cut : Buffer.concat([cut, Buffer.alloc(now.length - cut.length)]);
}
