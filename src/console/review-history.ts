/** The history of an entry: as it was written, every correction whether in force or not, and as it stands. */
import { entryWords, type Words } from "../figures/entry-words.ts";
import type { CaseFile } from "../record/case.ts";
import { corrected } from "../record/correcting.ts";
import type { Entry } from "../record/entry.ts";
import { type Correction, type Fact, standing } from "../record/standing.ts";

/** What an entry says, and the time it gives itself, in ISO 8601. */
export type Said = Words & { readonly at: string };

export type Step = {
  /** The correction as it was written. */
  readonly correction: Correction;
  /** 0 for a correction of the entry itself, 1 for one of such a correction, and so on. */
  readonly depth: number;
  /** Whether it counts: it has not been struck out, and what it puts right counts too. */
  readonly inForce: boolean;
  /** What it made of the entry; `null` for striking out. */
  readonly said: Said | null;
  /** As typed; empty where none was given. */
  readonly reason: string;
};

export type History = {
  readonly fact: Fact;
  readonly written: Said;
  readonly steps: readonly Step[];
  /** What stands now; `null` when it was struck out. */
  readonly stands: Said | null;
};

type Case = Pick<CaseFile, "entries" | "protocol">;

/** The history of an entry; that of a correction is the history of what it corrects. `null` for an unknown id. */
export function historyOf(file: Case, id: string): History | null {
  const fact = standing(file.entries).written.find(({ entry }) => entry.id === id);
  if (fact === undefined) return null;
  const { entry, logged } = fact;
  if (isCorrection(entry)) return entry.target === id ? null : historyOf(file, entry.target);
  return {
    fact,
    written: said(logged, file),
    steps: stepsOf(file, { entry: logged, depth: 0, counts: true, struck: false }),
    stands: fact.struck ? null : said(entry, file),
  };
}

type Corrected = {
  readonly entry: Entry;
  readonly depth: number;
  /** Whether it would count, were it not struck out. */
  readonly counts: boolean;
  readonly struck: boolean;
};

/** The corrections of an entry in the order of writing, each followed by those of its own. */
function stepsOf(file: Case, of: Corrected): Step[] {
  let now = of.entry;
  return standing(file.entries).written.flatMap(({ entry, logged, struck }) => {
    if (!isCorrection(entry) || !isCorrection(logged)) return [];
    if (entry.target !== of.entry.id || entry.seq <= of.entry.seq) return [];
    const after = entry.kind === "amend" ? corrected(now, entry.changes) : now;
    if (!struck) now = after;
    const counts = of.counts && (entry.kind === "void" || !of.struck);
    const step: Step = {
      correction: logged,
      depth: of.depth,
      inForce: counts && !struck,
      said: entry.kind === "void" ? null : said(after, file),
      reason: logged.kind === "void" ? logged.reason : (logged.note ?? ""),
    };
    return [step, ...stepsOf(file, { entry: logged, depth: of.depth + 1, counts, struck })];
  });
}

const said = (entry: Entry, { protocol }: Case): Said => ({ ...entryWords(entry, protocol), at: entry.at });

const isCorrection = (entry: Entry): entry is Correction => entry.kind === "amend" || entry.kind === "void";
