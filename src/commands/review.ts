/** `pumpside review`: a case or a folder of cases read back, on the screen or, without a terminal, as text. */
import { readdir, stat } from "node:fs/promises";
import { join, resolve } from "node:path";
import { reviewApp } from "../console/app.ts";
import { entryWords } from "../figures/entry-words.ts";
import { clockTimeOf } from "../format/instant.ts";
import { harmless } from "../format/text.ts";
import type { CaseFile } from "../record/case.ts";
import { figuresText } from "../reports/figures.ts";
import { openCase } from "../store/open-case.ts";
import { openDesk } from "./case-desk.ts";
import { caseNamed, folderOf, type Place, timeOf } from "./place.ts";
import { openSession } from "./session.ts";
import { hasTerminal, show } from "./show.tsx";
import { CASE_FAULT, complain, DONE, say, WRONG_CALL } from "./speak.ts";
import { safeAt } from "./unlock.ts";

export async function reviewVerb(name: string, options: Place): Promise<number> {
  const paths = await pathsIn(name);
  if (paths !== null) return folderReviewed(name, paths, options);
  const found = await caseNamed(name, options);
  if (!found.ok) return found.code;
  const { file, path, safe } = found.value;
  if (!hasTerminal()) return caseAsText(file);
  await show(openSession(openDesk(folderOf(options), { safe }), reviewApp([{ path }], null, 0, file)));
  return DONE;
}

/** The case files of a folder by name, which begins with their day; `null` for what is no folder. */
async function pathsIn(folder: string): Promise<string[] | null> {
  const found = await stat(folder).catch(() => null);
  if (!found?.isDirectory()) return null;
  const names = await readdir(folder).catch(() => []);
  return names
    .filter((name) => name.endsWith(".json"))
    .sort()
    .map((name) => join(resolve(folder), name));
}

async function folderReviewed(name: string, paths: readonly string[], options: Place): Promise<number> {
  if (paths.length === 0)
    return complain(`"${name}" holds no case: name a folder with case files in it.`, WRONG_CALL);
  const found = await safeAt(name, options);
  if (!found.ok) return found.code;
  const safe = found.value;
  if (hasTerminal()) {
    const shelf = paths.map((path) => ({ path }));
    await show(openSession(openDesk(folderOf(options), { safe }), reviewApp(shelf, null)));
    return DONE;
  }
  let code = DONE;
  for (const path of paths) {
    const opened = await openCase(path, [], safe);
    if (opened.ok) {
      say(`== ${harmless(opened.value.file.label)}`);
      code = Math.max(code, caseAsText(opened.value.file));
    } else code = complain(`"${path}": ${opened.fault}`, CASE_FAULT);
  }
  return code;
}

function caseAsText(file: CaseFile): number {
  for (const entry of file.entries) {
    const { subject, says } = entryWords(entry, file.protocol);
    say(`${clockTimeOf(entry.at)} ${`#${entry.seq}`.padStart(5)} ${subject.padEnd(11)} ${says}`);
  }
  const at = timeOf(file.entries.at(-1)?.loggedAt, file);
  if (!at.ok) return complain(at.fault, WRONG_CALL);
  say(`\n${figuresText(file, at.value)}`);
  return DONE;
}
