/** The cases of a folder with their summaries, from the index beside them as far as it holds. */
import { type CaseSummary, SUMMARISER } from "../reports/case-summary.ts";
import { type ListedCase, listCases } from "../store/case-list.ts";
import { progressOf } from "./progress.ts";

/** Newest first. Never rejects. */
export const casesIn = (folder: string): Promise<ListedCase<CaseSummary>[]> =>
  listCases(folder, { summariser: SUMMARISER });

/** The same for a verb, which shows how far it has come. */
export async function casesWithProgress(folder: string): Promise<ListedCase<CaseSummary>[]> {
  const progress = progressOf("reading cases");
  const cases = await listCases(folder, { summariser: SUMMARISER, onProgress: progress.at });
  progress.end();
  return cases;
}
