/** Many files read without opening them all at once: a system allows a process only so many. */

const AT_ONCE = 16;

/**
 * Does the work for every item, a few at once, and gives the results in the order of the items. After `signal` no more
 * is begun, and what was not begun has no result.
 */
export async function fewAtOnce<A, B>(
  items: readonly A[],
  work: (item: A) => Promise<B>,
  signal?: AbortSignal,
): Promise<B[]> {
  const results: unknown[] = items.map(() => NOT_BEGUN);
  const waiting = items.entries();
  const worker = async (): Promise<void> => {
    for (const [place, item] of waiting) {
      if (signal?.aborted) return;
      results[place] = await work(item);
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, worker));
  return results.filter((result): result is B => result !== NOT_BEGUN);
}

const NOT_BEGUN = Symbol("not begun");
