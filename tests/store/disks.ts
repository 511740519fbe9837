// Disks for tests: one that notes what is asked of it and keeps nothing, and the real one failing where it is told to.

import * as fs from "node:fs/promises";
import { basename } from "node:path";
import type { Disk, OpenFile } from "../../src/store/disk.ts";

/** Fails so many times (else always) at a call, on the file of that name or any. */
export type Failure = { call: string; code: string; on?: string; times?: number };

const systemError = (code: string): Error => Object.assign(new Error(`${code}: as the test asked`), { code });

function failer(failure?: Failure): (call: string, path: string) => void {
  let left = failure?.times ?? Number.POSITIVE_INFINITY;
  return (call, path) => {
    if (failure?.call !== call || left <= 0) return;
    if (failure.on !== undefined && failure.on !== basename(path)) return;
    left -= 1;
    throw systemError(failure.code);
  };
}

/** Notes every call in order, with the names of the files. */
export function recordingDisk(failure?: Failure): { disk: Disk; calls: string[] } {
  const calls: string[] = [];
  const fails = failer(failure);
  const note = async (call: string, path: string, ...rest: string[]) => {
    calls.push([call, basename(path), ...rest].join(" "));
    fails(call, path);
  };
  const disk: Disk = {
    async open(path, flags, mode) {
      await note("open", path, flags, ...(mode === undefined ? [] : [mode.toString(8)]));
      return {
        async writev(parts) {
          await note("write", path);
          return { bytesWritten: parts.reduce((sum, { length }) => sum + length, 0) };
        },
        sync: () => note("sync", path),
        close: () => note("close", path),
      };
    },
    rename: (from, to) => note("rename", from, basename(to)),
    unlink: (path) => note("unlink", path),
    link: (path, name) => note("link", path, basename(name)),
    copyFile: (path, name) => note("copy", path, basename(name)),
    async readFile(path) {
      await note("read", path);
      return Buffer.of();
    },
    // Looking changes nothing, and is not noted.
    stat: async () => ({ ino: 0, size: 0, mtimeMs: 0 }),
  };
  return { disk, calls };
}

/** The real disk, until it fails. */
export function failing(failure: Failure): Disk {
  const fails = failer(failure);
  return {
    async open(path, flags, mode) {
      fails("open", path);
      return failingFile(await fs.open(path, flags, mode), path, fails);
    },
    async rename(from, to) {
      fails("rename", from);
      await fs.rename(from, to);
    },
    unlink: fs.unlink,
    async link(path, name) {
      fails("link", path);
      await fs.link(path, name);
    },
    copyFile: fs.copyFile,
    readFile: fs.readFile,
    stat: fs.stat,
  };
}

function failingFile(file: fs.FileHandle, path: string, fails: ReturnType<typeof failer>): OpenFile {
  return {
    async writev(parts) {
      fails("write", path);
      return await file.writev(parts);
    },
    async sync() {
      fails("sync", path);
      await file.sync();
    },
    async close() {
      await file.close();
      fails("close", path);
    },
  };
}
