/** Rewriting the files of a case as another safe keeps them: an old form goes once the new one has been read back. */
import { lstat, readFile, unlink } from "node:fs/promises";
import { basename } from "node:path";
import { realDisk } from "./disk.ts";
import { durableWrite, temporaryOf } from "./durable-write.ts";
import { codeOf, readingFaultWords, refusal } from "./fault-words.ts";
import type { CaseFiles } from "./folder-files.ts";
import { lockCase } from "./lock.ts";
import { bytesOnDisk } from "./read-case-file.ts";
import { isEncrypted, type Safe } from "./safe.ts";

/** A file that stays as it was, by its name, and why, without a full stop. */
export type Left = { readonly name: string; readonly why: string };

export type Rewritten = {
  /** How many files were rewritten. */
  readonly files: number;
  readonly left: readonly Left[];
  /** Whether somebody else has the case, so that nothing of it was touched. */
  readonly isHeld: boolean;
};

/** Reads by `from`, writes by `to`; what lies there as `to` would have it already stays. Throws what writing throws. */
export async function rewriteCase(
  { path, files, leftOver }: CaseFiles,
  from: Safe,
  to: Safe,
): Promise<Rewritten> {
  const lock = await lockCase(path);
  if (!lock.ok) return { files: 0, left: [leftAs(path, lock.fault)], isHeld: true };
  try {
    for (const one of leftOver) await unlinkIfThere(one);
    const left: Left[] = [];
    let rewritten = 0;
    for (const one of files) {
      const content = await contentOf(one, from, to);
      if (content.is === "other") {
        await rewrite(one, content.bytes, from, to);
        rewritten += 1;
      }
      if (content.is === "unreadable") left.push(leftAs(one, content.fault));
    }
    return { files: rewritten, left, isHeld: false };
  } finally {
    await lock.value.release();
  }
}

/** Removes a file; that there is none is no fault. Throws the system's error. */
export const unlinkIfThere = (path: string): Promise<void> =>
  unlink(path).catch((error: unknown) => {
    if (codeOf(error) !== "ENOENT") throw error;
  });

const leftAs = (path: string, fault: string): Left => ({
  name: basename(path),
  why: fault.replace(/\.$/, ""),
});

type Content =
  | { readonly is: "right" }
  | { readonly is: "other"; readonly bytes: Uint8Array }
  | { readonly is: "unreadable"; readonly fault: string };

async function contentOf(path: string, from: Safe, to: Safe): Promise<Content> {
  try {
    // What a link leads to belongs to another place, and would stay there as it is.
    if ((await lstat(path)).isSymbolicLink()) throw refusal("it is a link to another place");
    const { bytes } = await bytesOnDisk(path);
    if (isEncrypted(bytes) === to.encrypts) return { is: "right" };
    return { is: "other", bytes: await from.take(bytes) };
  } catch (error) {
    return { is: "unreadable", fault: readingFaultWords(error) };
  }
}

const rewrite = (path: string, content: Uint8Array, from: Safe, to: Safe): Promise<void> =>
  durableWrite(path, to.put([content]), realDisk, async () => {
    const back = await from.take(await readFile(temporaryOf(path)));
    if (!Buffer.from(content).equals(back))
      throw refusal("the disk gave back something else than was written");
  });
