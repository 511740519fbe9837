// The built program as scripts call it: a process of its own, without a terminal.

import { type ChildProcess, execFile } from "node:child_process";
import { chown, mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect } from "vitest";
import { bundlePath } from "../../.ci/bundle.js";

export type Ended = { readonly code: number | null; readonly out: string; readonly err: string };

/** Exit codes, as the manual gives them. */
export const DONE = 0;
export const CASE_FAULT = 1;
export const WRONG_CALL = 2;

/** The user whom nothing belongs to: permissions bind everybody but the one who runs everything. */
const NOBODY = 65_534;

/** A folder for cases, the program run on it by a user whom permissions bind, and what removes it. */
export async function ordinaryUsersFolder() {
  if (process.getuid?.() !== 0) return caseFolder();
  const user = { uid: NOBODY, gid: NOBODY };
  const cases = await caseFolder(user);
  await chown(cases.dir, NOBODY, NOBODY);
  return cases;
}

/** A folder for cases, the program run on it, and what removes it. */
export async function caseFolder(user: { uid?: number; gid?: number } = {}) {
  const dir = await mkdtemp(join(tmpdir(), "pumpside-commands-"));
  const pumpside = (...words: string[]): Promise<Ended> =>
    new Promise((resolve) => {
      const env = { ...process.env, PUMPSIDE_DIR: dir, LANG: "C.UTF-8", LC_ALL: "", NODE_OPTIONS: "" };
      const child: ChildProcess = execFile(
        process.execPath,
        [bundlePath, ...words],
        { ...user, cwd: dir, env, maxBuffer: 64 * 1024 * 1024, timeout: 30_000 },
        (_error, out, err) => resolve({ code: child.exitCode, out, err }),
      );
      child.stdin?.end();
    });
  return { dir, pumpside, remove: () => rm(dir, { recursive: true, force: true }) };
}

/** Expects a call to end with a code, nothing on standard output, and one sentence about it on standard error. */
export function expectRefused(ended: Ended, code: number, says: string | RegExp): void {
  expect({ code: ended.code, out: ended.out }).toEqual({ code, out: "" });
  expect(ended.err).toMatch(/^pumpside: [^\n]+\.\n$/);
  expect(ended.err).toMatch(says);
}

/** Expects a call to end well, silent on standard error; gives what it printed. */
export function expectDone({ code, out, err }: Ended): string {
  expect({ code, err }).toEqual({ code: DONE, err: "" });
  return out;
}
