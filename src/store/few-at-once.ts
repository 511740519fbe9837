/** Many files read without opening them all at once: a system allows a process only so many. */

const AT_ONCE = 16;

/** Does the work for every item, a few at once, and gives the results in the order of the items. */
export async function fewAtOnce<A, B>(items: readonly A[], work: (item: A) => Promise<B>): Promise<B[]> {
  const results = new Array<B>(items.length);
  const waiting = items.entries();
  const worker = async (): Promise<void> => {
    for (const [place, item] of waiting) results[place] = await work(item);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, worker));
  return results;
}
