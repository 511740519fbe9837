/** The few things asked of a disk; tests put their own in its place. */
import { constants } from "node:fs";
import * as fs from "node:fs/promises";

export type Disk = {
  open(path: string, flags: string, mode?: number): Promise<OpenFile>;
  rename(from: string, to: string): Promise<void>;
  unlink(path: string): Promise<void>;
  /** A second name for a file. */
  link(path: string, name: string): Promise<void>;
  /** Copies a file to a name; with `COPYFILE_EXCL` only where there is none of that name. */
  copyFile(path: string, name: string, mode?: number): Promise<void>;
  readFile(path: string): Promise<Uint8Array>;
  stat(path: string): Promise<Stat>;
};

export type OpenFile = {
  /** Writes what goes at once of the parts, one after the other, and says how many bytes that was. */
  writev(parts: readonly Uint8Array[]): Promise<{ readonly bytesWritten: number }>;
  sync(): Promise<void>;
  close(): Promise<void>;
};

/** What tells one state of a file from another. */
export type Stat = {
  readonly ino: number;
  readonly size: number;
  readonly mtimeMs: number;
};

export const realDisk: Disk = fs;

export const OWNER_FILE = 0o600;
export const OWNER_FOLDER = 0o700;
export const ONLY_NEW = constants.COPYFILE_EXCL;

/** What a file system answers that knows no second names for a file. */
export const NO_LINKS = new Set(["EPERM", "ENOSYS", "ENOTSUP", "EOPNOTSUPP", "EMLINK", "EXDEV"]);
