/** The cases of a folder with their summaries, from the index beside them as far as it holds. */
import { type CaseSummary, SUMMARISER } from "../reports/case-summary.ts";
import { type ListedCase, listCases } from "../store/case-list.ts";
import type { Safe } from "../store/safe.ts";
import type { PassphraseFile } from "./passphrase.ts";
import { progressOf } from "./progress.ts";
import { CASE_FAULT, complain } from "./speak.ts";
import { type Found, safeAt } from "./unlock.ts";

/** Newest first; only what was read so far after `signal`. Never rejects. */
export const casesIn = (
  folder: string,
  safe: Safe,
  signal?: AbortSignal,
): Promise<ListedCase<CaseSummary>[]> => listCases(folder, { summariser: SUMMARISER, safe, signal });

/** The same for a verb, which shows how far it has come; a complaint already made when Ctrl-C stopped it. */
export async function casesWithProgress(
  folder: string,
  named: PassphraseFile,
): Promise<Found<ListedCase<CaseSummary>[]>> {
  const safe = await safeAt(folder, named);
  if (!safe.ok) return safe;
  const stopping = new AbortController();
  const stop = () => stopping.abort();
  process.once("SIGINT", stop);
  const progress = progressOf("reading cases");
  const { signal } = stopping;
  const cases = await listCases(folder, {
    summariser: SUMMARISER,
    safe: safe.value,
    onProgress: progress.at,
    signal,
  });
  progress.end();
  process.off("SIGINT", stop);
  if (!signal.aborted) return { ok: true, value: cases };
  return { ok: false, code: complain("stopped; what has been read is kept for the next time.", CASE_FAULT) };
}
