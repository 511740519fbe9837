/** `pumpside export`: the cases of a folder as lines of JSON, one case after the other, for an engine that reads many. */
import { readdir } from "node:fs/promises";
import { basename, join, resolve } from "node:path";
import { taken } from "../format/outcome.ts";
import { exportRows } from "../reports/export-lines.ts";
import type { Exported } from "../reports/formats.ts";
import { withoutNames } from "../reports/without-names.ts";
import { faultWords } from "../store/fault-words.ts";
import { idInName } from "../store/folder.ts";
import { readCaseFile } from "../store/read-case-file.ts";
import type { Safe } from "../store/safe.ts";
import { fileSink, type LineSink, standardOutput } from "./line-sink.ts";
import { folderOf, type Place } from "./place.ts";
import { progressOf } from "./progress.ts";
import { CASE_FAULT, complain, DONE, say, WRONG_CALL } from "./speak.ts";
import { safeAt } from "./unlock.ts";

type ExportOptions = Place & {
  readonly what?: Exported;
  readonly withoutNames?: boolean;
  readonly out?: string;
  readonly force?: boolean;
};

export async function exportVerb(folder: string | undefined, options: ExportOptions): Promise<number> {
  const from = folder === undefined ? folderOf(options) : resolve(folder);
  const names = await readdir(from).catch(() => null);
  if (names === null) return complain(`${from} can't be read: name a folder with cases in it.`, WRONG_CALL);
  const safe = await safeAt(from, options);
  if (!safe.ok) return safe.code;
  const sink =
    options.out === undefined ? taken(standardOutput()) : await fileSink(options.out, options.force === true);
  if (!sink.ok) return complain(sink.fault, CASE_FAULT);
  const paths = names
    .filter((name) => name.endsWith(".json"))
    .toSorted()
    .map((name) => join(from, name));
  try {
    return await exported(paths, safe.value, sink.value, options);
  } catch (error) {
    await sink.value.drop();
    return complain(`the export stopped, and nothing is left of it: ${faultWords(error)}.`, CASE_FAULT);
  }
}

/** One case is in hand at a time. Ctrl-C ends it between two cases. */
async function exported(
  paths: readonly string[],
  safe: Safe,
  sink: LineSink,
  options: ExportOptions,
): Promise<number> {
  let isStopped = false;
  const stop = () => {
    isStopped = true;
  };
  process.once("SIGINT", stop);
  const progress = progressOf("exporting cases");
  const damaged: string[] = [];
  for (const [i, path] of paths.entries()) {
    if (isStopped) break;
    const text = await linesOf(path, safe, options);
    if (text === null) damaged.push(idInName(path) ?? basename(path));
    else await sink.write(text);
    progress.at(i + 1, paths.length);
  }
  progress.end();
  process.off("SIGINT", stop);
  if (isStopped) {
    await sink.drop();
    return complain("the export was stopped; no file of it is left.", CASE_FAULT);
  }
  await sink.done();
  if (options.out !== undefined) say(options.out);
  return damaged.length === 0
    ? DONE
    : complain(`not exported, because they can't be read: ${damaged.join(", ")}.`, CASE_FAULT);
}

/** The lines of one case; nothing for a file of another program, `null` for a damaged case. */
async function linesOf(
  path: string,
  safe: Safe,
  { what = "entries", withoutNames: hidden }: ExportOptions,
): Promise<string | null> {
  const read = await readCaseFile(path, safe);
  if (!read.ok) return idInName(path) === null ? "" : null;
  const file = hidden ? withoutNames(read.value.file) : read.value.file;
  return exportRows(file, what)
    .map((row) => `${JSON.stringify(row)}\n`)
    .join("");
}
