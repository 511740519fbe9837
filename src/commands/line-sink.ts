/** Where many lines go: standard output or a new file, no faster than it takes them, and the file whole or not at all. */
import { once } from "node:events";
import { createWriteStream } from "node:fs";
import { link, rename, stat, unlink } from "node:fs/promises";
import type { Writable } from "node:stream";
import { finished } from "node:stream/promises";
import { type Outcome, refused, taken } from "../format/outcome.ts";
import { OWNER_FILE } from "../store/disk.ts";
import { temporaryOf } from "../store/durable-write.ts";
import { faultWords } from "../store/fault-words.ts";

export type LineSink = {
  /** Waits until there is room for more. Rejects with the system's error. */
  readonly write: (text: string) => Promise<void>;
  /** Ends it; a file stands under its name from then on. Rejects with the system's error. */
  readonly done: () => Promise<void>;
  /** Ends it without; nothing of the file is left. Never rejects. */
  readonly drop: () => Promise<void>;
};

const writeTo =
  (stream: Writable) =>
  async (text: string): Promise<void> => {
    if (!stream.write(text)) await once(stream, "drain");
  };

export const standardOutput = (): LineSink => ({
  write: writeTo(process.stdout),
  done: async () => {},
  drop: async () => {},
});

/** A sink into a file of that name, or a sentence. A file that is there already makes way only by `force`. Never rejects. */
export async function fileSink(path: string, force: boolean): Promise<Outcome<LineSink>> {
  if (!force && (await stat(path).catch(() => null)) !== null)
    return refused(`${path} is there already: name another file, or add --force to replace it.`);
  const temporary = temporaryOf(path);
  const stream = createWriteStream(temporary, { mode: OWNER_FILE, flush: true });
  try {
    await once(stream, "open");
  } catch (error) {
    return refused(`${path} can't be written: ${faultWords(error)}.`);
  }
  return taken({
    write: writeTo(stream),
    async done() {
      stream.end();
      await finished(stream);
      if (force) return rename(temporary, path);
      // Unlike renaming, linking never takes the place of a file that has come meanwhile.
      await link(temporary, path).catch(() => rename(temporary, path));
      await unlink(temporary).catch(() => undefined);
    },
    async drop() {
      stream.destroy();
      await unlink(temporary).catch(() => undefined);
    },
  });
}
