/** A small file beside the case for what is half typed: the convenience of a person, not part of the record. */
import { readFile, unlink } from "node:fs/promises";
import { durableWrite } from "./durable-write.ts";
import { plain, type Safe } from "./safe.ts";

const PAUSE = 400;
const MOST_BYTES = 200_000;

const beside = (path: string): string => `${path}.half-typed`;

/** What was kept beside a case; `null` where there is nothing, or nothing that can be read. Never rejects. */
export async function readBeside(path: string, safe: Safe = plain): Promise<unknown> {
  try {
    const bytes = await safe.take(await readFile(beside(path)));
    return bytes.length > MOST_BYTES ? null : JSON.parse(Buffer.from(bytes).toString("utf8"));
  } catch {
    return null;
  }
}

export type BesideKeeper = {
  /** Takes the newest state; an empty one takes the file away. Written a moment after typing pauses. */
  readonly keep: (half: readonly unknown[]) => void;
  /** Writes at once what is not written yet. Never rejects. */
  readonly close: () => Promise<void>;
};

/** Keeps what is half typed beside the case at `path`. A failure is passed over: the record itself is kept elsewhere. */
export function keepBeside(path: string, safe: Safe = plain): BesideKeeper {
  let wanted = "[]";
  let written = "";
  let timer: ReturnType<typeof setTimeout> | undefined;
  let writing: Promise<void> = Promise.resolve();

  const write = async (): Promise<void> => {
    const newest = wanted;
    if (newest === written) return;
    try {
      if (newest === "[]") await unlink(beside(path)).catch(() => undefined);
      else await durableWrite(beside(path), safe.put([Buffer.from(newest)]));
      written = newest;
    } catch {
      // The next change tries again.
    }
  };
  const later = (): void => {
    writing = writing.then(write);
  };

  return {
    keep(half) {
      wanted = JSON.stringify(half);
      clearTimeout(timer);
      if (wanted !== written) timer = setTimeout(later, PAUSE);
    },
    async close() {
      clearTimeout(timer);
      later();
      await writing;
    },
  };
}
