/** What could not be saved when a case was let go: kept on this computer until the case is opened here again. */
import { lstat, unlink } from "node:fs/promises";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import envPaths from "env-paths";
import type { CaseFile } from "../record/case.ts";
import { caseBytes, isStateOf } from "./case-bytes.ts";
import { durableWrite } from "./durable-write.ts";
import { codeOf } from "./fault-words.ts";
import { makeFolder } from "./folder.ts";
import { keepAside } from "./last-good.ts";
import { bytesOf } from "./read-case-file.ts";
import { plain, type Safe } from "./safe.ts";

/** Folders that are tried one after the other: one that lasts, and one that may lie on another disk. */
const places = (): string[] => [
  join(envPaths("pumpside", { suffix: "" }).data, "unsaved"),
  join(tmpdir(), `pumpside-unsaved-${process.getuid?.() ?? "here"}`),
];

/** Where the case at `path` may have been kept. */
export const unsavedOf = (path: string): string[] => places().map((place) => join(place, basename(path)));

/**
 * Keeps the whole case, on the disk when this returns, in the first of the places that takes it: its path there; `null`
 * where none does. What an earlier session left there keeps a name of its own. Never rejects.
 */
export async function keepUnsaved(path: string, file: CaseFile, safe: Safe = plain): Promise<string | null> {
  for (const place of places()) {
    const kept = join(place, basename(path));
    try {
      await ownFolder(place);
      await keepAside(kept, "replaced").catch((error: unknown) => {
        if (codeOf(error) !== "ENOENT") throw error;
      });
      await durableWrite(kept, safe.put(caseBytes()(file)));
      return kept;
    } catch {
      // The next place may be on a disk that has room.
    }
  }
  return null;
}

/** Takes away what was kept, where `saved`, the case as its own file holds it, goes on from that. Never rejects. */
export async function forgetUnsaved(path: string, saved: CaseFile, safe: Safe = plain): Promise<void> {
  for (const kept of unsavedOf(path)) {
    const found = await bytesOf(kept, safe).catch(() => null);
    if (found !== null && isStateOf(found.bytes, saved)) await unlink(kept).catch(() => undefined);
  }
}

/** The folder, for its owner only; one that somebody else has made, or a link, is not used. Throws. */
async function ownFolder(place: string): Promise<void> {
  await makeFolder(place);
  const found = await lstat(place);
  if (!found.isDirectory()) throw new Error("not a folder");
  if (process.getuid !== undefined && found.uid !== process.getuid()) throw new Error("another's folder");
}
