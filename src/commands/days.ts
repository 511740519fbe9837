/** Days as they are given on the command line: `2026-03-04`. */
import type { Choice } from "../reports/choose-cases.ts";

/** What is wrong with the days of a choice, in a sentence, or `null`. */
export function dayFault({ since, until }: Choice): string | null {
  const wrong = [since, until].find((day) => day !== undefined && !isDay(day));
  if (wrong !== undefined) return `"${wrong}" is no day: type it as 2026-03-04.`;
  return since !== undefined && until !== undefined && since > until
    ? `nothing lies since ${since} and until ${until}: turn the two round.`
    : null;
}

function isDay(text: string): boolean {
  const read = /^\d{4}-\d\d-\d\d$/.test(text) ? new Date(`${text}T00:00:00Z`) : null;
  return read !== null && !Number.isNaN(read.getTime()) && read.toISOString().startsWith(text);
}
