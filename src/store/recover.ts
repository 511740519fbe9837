/** Recovery: opening a damaged or missing case from what is whole, and repairing it without overwriting anything. */
import { basename } from "node:path";
import { clockTimeOf, fromIso, type Instant, msOf, toIso } from "../format/instant.ts";
import type { CaseFile } from "../record/case.ts";
import type { Entry } from "../record/entry.ts";
import { caseBytes } from "./case-bytes.ts";
import { openClock, realSources, recordedSteps } from "./clock.ts";
import { durableWrite } from "./durable-write.ts";
import { codeOf } from "./fault-words.ts";
import { keepAside, lastGoodOf } from "./last-good.ts";
import { bytesOf } from "./read-case-file.ts";
import { salvaged } from "./salvage.ts";
import { markAsRead } from "./sound-case.ts";

type Recovered = {
  readonly file: CaseFile;
  /** What a person has to know of it: one or two sentences. */
  readonly told: string;
};

/**
 * The case that can be put together from a damaged file, its last good copy and any other `copies`; `null` where there
 * is none, or the file is not damaged but something else. Changes nothing on the disk. Never rejects.
 */
export async function recoverCase(path: string, copies: readonly string[] = []): Promise<Recovered | null> {
  const own = await textAt(path);
  if (own === null) return null;
  const others = await Promise.all([lastGoodOf(path), ...copies].map(textAt));
  const file = salvaged([own, ...others.filter((text) => text !== null)]);
  if (file === null) return null;
  markAsRead(file);
  const last = file.entries.at(-1) as Entry;
  const what = own === "" ? "missing or empty" : "damaged";
  return {
    file,
    told: `The file of this case is ${what}: it was recovered up to entry ${last.seq} (${clockTimeOf(last.loggedAt)}). Look at what follows it.`,
  };
}

/**
 * Puts a recovered case in its place. The damaged file keeps a name of its own, and the record says what happened unless
 * the case is closed. Throws the system's error.
 */
export async function repairCase(path: string, { file, told }: Recovered): Promise<Recovered> {
  const aside = await keepAside(path, "damaged").catch((error: unknown) => {
    if (codeOf(error) === "ENOENT") return null;
    throw error;
  });
  const kept = aside === null ? "" : ` What was left of the file is kept beside it as ${basename(aside)}.`;
  const whole = isClosed(file) ? file : withNote(file, `${told}${kept}`);
  // Past the last good copy, which may be all that is whole.
  await durableWrite(path, caseBytes()(whole));
  return { file: whole, told: `${told}${kept}` };
}

/** The text of a file as far as it can be read: empty where there is none, `null` where it is nothing to recover. */
async function textAt(path: string): Promise<string | null> {
  try {
    return new TextDecoder().decode((await bytesOf(path)).bytes);
  } catch (error) {
    return codeOf(error) === "ENOENT" ? "" : null;
  }
}

const isClosed = ({ entries }: CaseFile): boolean =>
  entries.findLast(({ kind }) => kind === "closed" || kind === "reopened")?.kind === "closed";

function withNote(file: CaseFile, text: string): CaseFile {
  const last = file.entries.at(-1) as Entry;
  const seq = last.seq + 1;
  const at = toIso(nowAfter(file, last));
  const note = { id: `e${seq}`, seq, at, loggedAt: at, by: last.by, typed: "", kind: "note" as const, text };
  return { ...file, entries: [...file.entries, note] };
}

function nowAfter({ entries }: CaseFile, { loggedAt }: Entry): Instant {
  const now = openClock(realSources, recordedSteps(entries)).now();
  return now.ms >= msOf(loggedAt) ? now : (fromIso(loggedAt) ?? now);
}
