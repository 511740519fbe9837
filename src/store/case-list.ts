/** The cases of a folder: listing them, and finding one by its path, label or id. */
import { readdir, stat } from "node:fs/promises";
import { basename, join, resolve, sep } from "node:path";
import { msOf } from "../format/instant.ts";
import { type Outcome, refused, taken } from "../format/outcome.ts";
import { listed } from "../format/text.ts";
import type { CaseFile } from "../record/case.ts";
import { ofKind, standing } from "../record/standing.ts";
import { isSame, type Row, type Rows, readIndex, type Summariser, writeIndex } from "./case-index.ts";
import { fewAtOnce } from "./few-at-once.ts";
import { idInName } from "./folder.ts";
import { lastGoodOf } from "./last-good.ts";
import { readCaseFile } from "./read-case-file.ts";
import { recoverCase } from "./recover.ts";
import { plain, type Safe } from "./safe.ts";

/** The least that a list tells of a case. */
export type Summary = {
  readonly label: string;
  /** When it was opened, in ISO 8601. */
  readonly opened: string;
  readonly entries: number;
  readonly state: "open" | "closed";
  readonly operation?: string | undefined;
};

type Sound<S> = S & {
  readonly path: string;
  readonly id: string;
  readonly fault?: undefined;
  /** What a person has to know of a case that is damaged and was recovered. */
  readonly damage?: string | undefined;
};

/** A file that can't be read: only its name is known, and why. */
export type Damaged = { readonly path: string; readonly id: string; readonly fault: string };

export type ListedCase<S extends Summary = Summary> = Sound<S> | Damaged;

type Listing<S extends Summary> = {
  readonly summariser: Summariser<S>;
  /** What the cases and their index are kept in. */
  readonly safe?: Safe | undefined;
  /** Hears how many of the cases have been looked at. */
  readonly onProgress?: ((done: number, all: number) => void) | undefined;
  /** Ends it early: then only what was read so far is listed, and kept for the next time. */
  readonly signal?: AbortSignal | undefined;
};

/** Fewer cases are read as quickly as an index of them, and a small folder stays as it is. */
const WORTH_AN_INDEX = 50;
/** So many cases newly read are kept in the index at once, so that stopping a long list loses little of it. */
const KEPT_EACH = 500;

/**
 * Every case in a folder, newest first, damaged ones with their fault. Files of other programs are passed over. The
 * cases are the truth: of each that has changed since the index was made, and of each damaged one, the file is read.
 * Never rejects.
 */
export async function listCases(folder: string): Promise<ListedCase[]>;
export async function listCases<S extends Summary>(
  folder: string,
  listing: Listing<S>,
): Promise<ListedCase<S>[]>;
export async function listCases(folder: string, listing: Listing<Summary> = NO_INDEX): Promise<ListedCase[]> {
  const { summariser, safe = plain, onProgress, signal } = listing;
  const names = caseNames(await readdir(folder).catch(() => []));
  const hasIndex = listing !== NO_INDEX && names.length >= WORTH_AN_INDEX;
  const known: Rows<Summary> = hasIndex ? await readIndex(folder, summariser, safe) : new Map();
  const rows = new Map<string, Row<Summary>>();
  let [done, fresh] = [0, 0];
  const keep = (isWhole: boolean) =>
    writeIndex(folder, summariser, isWhole ? rows : new Map([...known, ...rows]), safe);
  const look = async (name: string) => {
    const { one, row } = await lookedAt(join(folder, name), known.get(name), summariser, safe);
    if (row) rows.set(name, row);
    const isFresh = row !== undefined && row !== known.get(name);
    if (isFresh && ++fresh % KEPT_EACH === 0 && hasIndex) await keep(false);
    onProgress?.(++done, names.length);
    return one;
  };
  const found = await fewAtOnce(names, look, signal);
  if (hasIndex && (fresh > 0 || rows.size !== known.size)) await keep(!signal?.aborted);
  return found.filter((one) => one !== null).sort((a, b) => timeOf(b) - timeOf(a));
}

type Looked = { readonly one: ListedCase | null; readonly row?: Row<Summary> };

/** A case as the index knows it, where its file has not changed since, else as the file tells it. */
async function lookedAt(
  path: string,
  before: Row<Summary> | undefined,
  { of }: Summariser<Summary>,
  safe: Safe,
): Promise<Looked> {
  const isKnown = before !== undefined && (await isUnchanged(path, before));
  if (isKnown) return { one: { ...before.summary, path, id: before.id }, row: before };
  return caseAt(path, of, safe);
}

const isUnchanged = (path: string, row: Row<unknown>): Promise<boolean> =>
  stat(path).then(
    (now) => isSame(now, row.stat),
    () => false,
  );

/** Case files, and those of which only the last good copy is there. */
const caseNames = (names: readonly string[]): string[] => [
  ...new Set(
    names.flatMap((name) =>
      name.endsWith(".json")
        ? [name]
        : name.endsWith(lastGoodOf(".json"))
          ? [name.slice(0, -lastGoodOf("").length)]
          : [],
    ),
  ),
];

/** The file that is named by its path, from here or from the folder of cases; `null` for what is no path. Never rejects. */
export const fileNamed = async (folder: string, name: string): Promise<string | null> =>
  looksLikePath(name) ? await fileAt(name, join(folder, name)) : null;

/** The path of a case named by its path, its label or its id, or a sentence. `list` gives the cases. Never rejects. */
export async function findCase(
  folder: string,
  pathOrLabel: string,
  list: (folder: string) => Promise<readonly ListedCase[]> = listCases,
): Promise<Outcome<string>> {
  const path = await fileNamed(folder, pathOrLabel);
  if (path !== null) return taken(path);
  const cases = await list(folder);
  const found = cases.filter(
    (one) => one.id === pathOrLabel || ("label" in one && one.label === pathOrLabel),
  );
  if (found.length < 2) return fromOne(found[0], pathOrLabel);
  const ids = found.map(({ id }) => id);
  // A file that was copied within the folder has the id of the other: then only the file's name tells them apart.
  const [by, names] =
    new Set(ids).size === ids.length ? ["id", ids] : ["file", found.map(({ path }) => basename(path))];
  return refused(`${found.length} cases have that label: name one by its ${by}, ${listed(names, "or")}.`);
}

async function fromOne(found: ListedCase | undefined, asked: string): Promise<Outcome<string>> {
  if (found !== undefined) return taken(found.path);
  // What is wrong with a path is said when it is opened.
  if (looksLikePath(asked) || (await fileAt(asked)) !== null) return taken(resolve(asked));
  return refused("no case here has that label or id: `pumpside list` shows the cases.");
}

/** A case as its file tells it, and the row of a sound one for the index. */
async function caseAt(path: string, of: (file: CaseFile) => Summary, safe: Safe): Promise<Looked> {
  const read = await readCaseFile(path, safe);
  if (read.ok) {
    const { file, stat } = read.value;
    const row = {
      stat: { ino: stat.ino, size: stat.size, mtimeMs: stat.mtimeMs },
      id: file.id,
      summary: of(file),
    };
    return { one: { ...row.summary, path, id: file.id }, row };
  }
  const id = idInName(path);
  const found = id === null ? null : await recoverCase(path, [], safe);
  if (found !== null) return { one: { ...of(found.file), path, id: found.file.id, damage: found.told } };
  return { one: id === null ? null : { path, id, fault: read.fault } };
}

/** What any list needs. */
const plainSummary = ({ label, entries }: CaseFile): Summary => ({
  label,
  opened: entries[0]?.loggedAt ?? "",
  entries: entries.length,
  state: stateOf(entries),
  operation: ofKind(standing(entries).facts, "plan").findLast(({ entry }) => entry.operation !== undefined)
    ?.entry.operation,
});

/** A list that keeps nothing for the next time. */
const NO_INDEX: Listing<Summary> = { summariser: { name: "", of: plainSummary, read: () => null } };

const stateOf = (entries: CaseFile["entries"]): Summary["state"] =>
  entries.findLast(({ kind }) => kind === "closed" || kind === "reopened")?.kind === "closed"
    ? "closed"
    : "open";

/** Milliseconds by which cases are put in order; of a damaged one only the day in its name is known. */
function timeOf(one: ListedCase): number {
  if (one.fault === undefined) return msOf(one.opened);
  const day = one.id.slice(0, 8);
  return msOf(`${day.slice(0, 4)}-${day.slice(4, 6)}-${day.slice(6)}T23:59:59Z`);
}

const looksLikePath = (text: string): boolean =>
  text.includes("/") || text.includes(sep) || text.endsWith(".json");

/** The first of the paths that is a file. */
async function fileAt(...paths: string[]): Promise<string | null> {
  for (const path of paths) {
    const found = await stat(path).catch(() => null);
    if (found?.isFile()) return resolve(path);
  }
  return null;
}
