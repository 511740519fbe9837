/** The index: what each case of a folder said of itself when it was last read, so that a long list needs no reading. */
import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { type Adapter, Low } from "lowdb";
import type { CaseFile } from "../record/case.ts";
import type { Stat } from "./disk.ts";
import { durableWrite } from "./durable-write.ts";
import { isMarked } from "./keyhole.ts";
import { plain, type Safe } from "./safe.ts";

/** Makes a summary of a case, and reads one back that was kept. */
export type Summariser<S> = {
  /** Names the shape and the meaning of the summary: an index made under another name is not used. */
  readonly name: string;
  readonly of: (file: CaseFile) => S;
  /** The summary in a value from a file, or `null`. */
  readonly read: (value: unknown) => S | null;
};

export type Row<S> = { readonly stat: Stat; readonly id: string; readonly summary: S };

/** Rows by the name of the case's file. */
export type Rows<S> = ReadonlyMap<string, Row<S>>;

/** No case has this name, and no list takes it for one. */
export const indexOf = (folder: string): string => join(folder, "pumpside.index");

type Kept = { readonly made: string; readonly rows: readonly (readonly [string, unknown])[] };
const EMPTY: Kept = { made: "", rows: [] };

/** The sum comes first, so that an index that was cut short or changed is known for one. */
const indexAdapter = (path: string, safe: Safe): Adapter<Kept> => ({
  async read() {
    const text = Buffer.from(await safe.take(await readFile(path))).toString("utf8");
    const end = text.indexOf("\n");
    const body = text.slice(end + 1);
    return text.slice(0, end) === sumOf(body) ? (JSON.parse(body) as Kept) : null;
  },
  async write(kept) {
    const body = JSON.stringify(kept);
    await durableWrite(path, safe.put([Buffer.from(`${sumOf(body)}\n`), Buffer.from(body)]));
  },
});

const sumOf = (text: string): string => createHash("sha256").update(text).digest("hex");

const low = (folder: string, safe: Safe): Low<Kept> =>
  new Low<Kept>(indexAdapter(indexOf(folder), safe), EMPTY);

/** The rows that can be relied on. One that is damaged, or of another program or version, has none. Never rejects. */
export async function readIndex<S>(
  folder: string,
  { name, read }: Summariser<S>,
  safe: Safe = plain,
): Promise<Rows<S>> {
  const index = low(folder, safe);
  try {
    await index.read();
    if (index.data.made !== name) return new Map();
    return new Map(
      index.data.rows.flatMap(([file, value]) => {
        const row = rowIn(value, read);
        return typeof file === "string" && row ? [[file, row] as const] : [];
      }),
    );
  } catch {
    return new Map();
  }
}

/** Keeps rows for the next time. A folder that can't be written to is no fault: the cases are all there. Never rejects. */
export async function writeIndex<S>(
  folder: string,
  { name }: Summariser<S>,
  rows: Iterable<readonly [string, Row<S>]>,
  safe: Safe = plain,
): Promise<void> {
  // A list that began before the folder was encrypted must not leave the labels behind.
  if (!safe.encrypts && (await isMarked(folder))) return;
  const index = low(folder, safe);
  index.data = { made: name, rows: [...rows] };
  await index.write().catch(() => undefined);
}

/** Whether the file is the one that was read: a save gives it a new place on the disk, a size and a time. */
export const isSame = (one: Stat, other: Stat): boolean =>
  one.ino === other.ino && one.size === other.size && one.mtimeMs === other.mtimeMs;

function rowIn<S>(value: unknown, read: (value: unknown) => S | null): Row<S> | null {
  if (typeof value !== "object" || value === null) return null;
  const { stat, id, summary } = value as Partial<Row<unknown>>;
  if (typeof id !== "string" || typeof stat !== "object" || stat === null) return null;
  const known = read(summary);
  return known === null ? null : { stat, id, summary: known };
}
