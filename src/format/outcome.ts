/** What comes of reading something a person or a file said: a value, or one sentence that says why not. */

export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly fault: string };

export const taken = <T>(value: T): Outcome<T> => ({ ok: true, value });

/** `fault`: one whole sentence: what, where, and what to do. */
export const refused = (fault: string): Outcome<never> => ({ ok: false, fault });

/** Goes on with the value, or passes the refusal on. */
export const andThen = <T, U>(outcome: Outcome<T>, next: (value: T) => Outcome<U>): Outcome<U> =>
  outcome.ok ? next(outcome.value) : outcome;
