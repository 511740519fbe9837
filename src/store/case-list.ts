/** The cases of a folder: listing them, and finding one by its path, label or id. */
import { readdir, stat } from "node:fs/promises";
import { join, resolve, sep } from "node:path";
import { msOf } from "../format/instant.ts";
import { type Outcome, refused, taken } from "../format/outcome.ts";
import { listed } from "../format/text.ts";
import type { CaseFile } from "../record/case.ts";
import { ofKind, standing } from "../record/standing.ts";
import { idInName } from "./folder.ts";
import { lastGoodOf } from "./last-good.ts";
import { readCaseFile } from "./read-case-file.ts";
import { recoverCase } from "./recover.ts";

type Sound = {
  path: string;
  id: string;
  label: string;
  /** When it was opened, in ISO 8601. */
  opened: string;
  entries: number;
  state: "open" | "closed";
  operation?: string | undefined;
  fault?: undefined;
  /** What a person has to know of a case that is damaged and was recovered. */
  damage?: string | undefined;
};

/** A file that can't be read: only its name is known, and why. */
type Damaged = { path: string; id: string; fault: string };

export type ListedCase = Sound | Damaged;

/** Every case in a folder, newest first, damaged ones with their fault. Files of other programs are passed over. Never rejects. */
export async function listCases(folder: string): Promise<ListedCase[]> {
  const names = await readdir(folder).catch(() => []);
  const found = await Promise.all(caseNames(names).map((name) => caseAt(join(folder, name))));
  return found.filter((one) => one !== null).sort((a, b) => timeOf(b) - timeOf(a));
}

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

/** The path of a case named by its path, its label or its id, or a sentence. Never rejects. */
export async function findCase(folder: string, pathOrLabel: string): Promise<Outcome<string>> {
  const path = looksLikePath(pathOrLabel) ? await fileAt(pathOrLabel, join(folder, pathOrLabel)) : null;
  if (path !== null) return taken(path);
  const cases = await listCases(folder);
  const found = cases.filter(
    (one) => one.id === pathOrLabel || ("label" in one && one.label === pathOrLabel),
  );
  if (found.length < 2) return fromOne(found[0], pathOrLabel);
  const ids = listed(
    found.map(({ id }) => id),
    "or",
  );
  return refused(`${found.length} cases have that label: name one by its id, ${ids}.`);
}

async function fromOne(found: ListedCase | undefined, asked: string): Promise<Outcome<string>> {
  if (found !== undefined) return taken(found.path);
  // What is wrong with a path is said when it is opened.
  if (looksLikePath(asked) || (await fileAt(asked)) !== null) return taken(resolve(asked));
  return refused("no case here has that label or id: `pumpside list` shows the cases.");
}

async function caseAt(path: string): Promise<ListedCase | null> {
  const read = await readCaseFile(path);
  if (read.ok) return summaryOf(path, read.value.file);
  const id = idInName(path);
  const found = id === null ? null : await recoverCase(path);
  if (found !== null) return { ...summaryOf(path, found.file), damage: found.told };
  return id === null ? null : { path, id, fault: read.fault };
}

function summaryOf(path: string, { id, label, entries }: CaseFile): Sound {
  const { facts } = standing(entries);
  return {
    path,
    id,
    label,
    opened: entries[0]?.loggedAt ?? "",
    entries: entries.length,
    state: stateOf(entries),
    operation: ofKind(facts, "plan").findLast(({ entry }) => entry.operation !== undefined)?.entry.operation,
  };
}

const stateOf = (entries: CaseFile["entries"]): Sound["state"] =>
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
