/** The second copy: every saved state of a case in another folder too, in the background, and caught up when it can be. */
import { basename, join, resolve } from "node:path";
import type { CaseFile } from "../record/case.ts";
import { type Keeper, type KeeperTools, keepCase } from "./keeper.ts";
import { plain, type Safe } from "./safe.ts";
import { unsavedOf } from "./unsaved.ts";

/** The folder for second copies: the one asked for, else that of the environment; `null` where there is none. */
export function copyFolder(asked?: string, environment: NodeJS.ProcessEnv = process.env): string | null {
  const folder = asked || environment.PUMPSIDE_COPY_DIR;
  return folder ? resolve(folder) : null;
}

/** Where the second copy of a case lies. */
export const copyOf = (path: string, folder: string): string => join(folder, basename(path));

/** Where else a case may lie: in the folder for second copies, if any, and where what could not be saved is kept. */
export const copiesOf = (path: string, folder: string | null): string[] => [
  ...(folder === null ? [] : [copyOf(path, folder)]),
  ...unsavedOf(path),
];

const NEVER_SEEN = { ino: -1, size: -1, mtimeMs: -1 };

/**
 * Keeps the second copy of the case at `path` in `folder`, beginning with the state it has now. The folder is never made:
 * where a share is not there, a folder of its name on this computer would only look like a copy.
 */
export function keepCopy(folder: string, tools: Omit<KeeperTools, "onForeign" | "asRead">): Keeper {
  const nothing: CaseFile = { ...tools.file, entries: [] };
  const keeper = keepCase({
    ...tools,
    path: copyOf(tools.path, folder),
    file: nothing,
    // What lies there is ours as far as the case goes on from it; anything else keeps a name of its own.
    asRead: { file: tools.file, stat: NEVER_SEEN },
  });
  keeper.keep(tools.file);
  return keeper;
}

/** Copies one state of a case within `ms`; why it could not be, in words without a full stop. Never rejects. */
export async function copyOnce(
  folder: string,
  path: string,
  file: CaseFile,
  safe: Safe = plain,
  ms = 3000,
): Promise<string | null> {
  let why = "the folder does not answer";
  const keeper = keepCopy(folder, {
    path,
    file,
    safe,
    onSaved: () => {},
    onFault: (words) => {
      why = words;
    },
  });
  const copied = await keeper.settle(ms);
  await keeper.close(0);
  return copied ? null : why;
}
