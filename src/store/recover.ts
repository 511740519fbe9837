/** Recovery: opening a damaged or missing case from what is whole, and repairing it without overwriting anything. */
import { basename } from "node:path";
import { clockTimeOf, fromIso, type Instant, msOf, toIso } from "../format/instant.ts";
import type { CaseFile } from "../record/case.ts";
import type { Entry } from "../record/entry.ts";
import { caseBytes } from "./case-bytes.ts";
import { openClock, realSources, recordedSteps } from "./clock.ts";
import { durableWrite } from "./durable-write.ts";
import { codeOf, isDamage } from "./fault-words.ts";
import { keepAside, lastGoodOf } from "./last-good.ts";
import { bytesOf } from "./read-case-file.ts";
import { plain, type Safe } from "./safe.ts";
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
export async function recoverCase(
  path: string,
  copies: readonly string[] = [],
  safe: Safe = plain,
): Promise<Recovered | null> {
  const own = await foundAt(path, safe);
  if (own === null) return null;
  const others = await Promise.all([lastGoodOf(path), ...copies].map((copy) => foundAt(copy, safe)));
  const file = salvaged([own, ...others.filter((found) => found !== null)].map(({ text }) => text));
  if (file === null) return null;
  markAsRead(file);
  const last = file.entries.at(-1) as Entry;
  return {
    file,
    told: `The file of this case is ${own.is}: it was recovered up to entry ${last.seq} (${clockTimeOf(last.loggedAt)}). Look at what follows it.`,
  };
}

/**
 * Puts a recovered case in its place. The damaged file keeps a name of its own, and the record says what happened unless
 * the case is closed. Throws the system's error.
 */
export async function repairCase(
  path: string,
  { file, told }: Recovered,
  safe: Safe = plain,
): Promise<Recovered> {
  const aside = await keepAside(path, "damaged").catch((error: unknown) => {
    if (codeOf(error) === "ENOENT") return null;
    throw error;
  });
  const kept = aside === null ? "" : ` What was left of the file is kept beside it as ${basename(aside)}.`;
  const whole = isClosed(file) ? file : withNote(file, `${told}${kept}`);
  // Past the last good copy, which may be all that is whole.
  await durableWrite(path, safe.put(caseBytes()(whole)));
  return { file: whole, told: `${told}${kept}` };
}

type Found = { readonly text: string; readonly is: string };

const MISSING: Found = { text: "", is: "missing or empty" };
const UNREADABLE: Found = {
  text: "",
  is: "damaged and, being encrypted, can't be read even in part, so that a copy had to serve",
};

/** The text of a file as far as it can be read, and how the file is; `null` where it is nothing to recover. */
async function foundAt(path: string, safe: Safe): Promise<Found | null> {
  try {
    const text = new TextDecoder().decode((await bytesOf(path, safe)).bytes);
    return text === "" ? MISSING : { text, is: "damaged" };
  } catch (error) {
    if (isDamage(error)) return UNREADABLE;
    return codeOf(error) === "ENOENT" ? MISSING : null;
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
