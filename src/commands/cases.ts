/** The cases of a folder with their summaries, from the index beside them as far as it holds. */
import { type CaseSummary, SUMMARISER } from "../reports/case-summary.ts";
import { type ListedCase, listCases } from "../store/case-list.ts";
import { progressOf } from "./progress.ts";
import { CASE_FAULT, complain } from "./speak.ts";

type Cases =
  | { readonly ok: true; readonly value: ListedCase<CaseSummary>[] }
  | { readonly ok: false; readonly code: number };

/** Newest first; only what was read so far after `signal`. Never rejects. */
export const casesIn = (folder: string, signal?: AbortSignal): Promise<ListedCase<CaseSummary>[]> =>
  listCases(folder, { summariser: SUMMARISER, signal });

/** The same for a verb, which shows how far it has come; a complaint already made when Ctrl-C stopped it. */
export async function casesWithProgress(folder: string): Promise<Cases> {
  const stopping = new AbortController();
  const stop = () => stopping.abort();
  process.once("SIGINT", stop);
  const progress = progressOf("reading cases");
  const { signal } = stopping;
  const cases = await listCases(folder, { summariser: SUMMARISER, onProgress: progress.at, signal });
  progress.end();
  process.off("SIGINT", stop);
  if (!signal.aborted) return { ok: true, value: cases };
  return { ok: false, code: complain("stopped; what has been read is kept for the next time.", CASE_FAULT) };
}
