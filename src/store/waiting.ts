/** Waiting that can be ended, and waiting for something no longer than so long. */

/** Waits so many milliseconds, or less when `signal` ends it. */
export const waiting = (ms: number, signal: AbortSignal): Promise<void> =>
  new Promise((resolve) => {
    const timer = setTimeout(resolve, ms);
    signal.addEventListener(
      "abort",
      () => {
        clearTimeout(timer);
        resolve();
      },
      { once: true },
    );
  });

/** What comes of `work`, or `otherwise` when it takes longer than `ms`. The work itself goes on. */
export async function within<T>(ms: number, work: Promise<T>, otherwise: T): Promise<T> {
  const over = new AbortController();
  const late = waiting(ms, over.signal).then(() => otherwise);
  try {
    return await Promise.race([work, late]);
  } finally {
    over.abort();
  }
}
