/** What an invented case is made of: who and where, and every stroke with its time of day. */
import type { Instant } from "../../format/instant.ts";
import type { Protocol } from "../../protocol/protocol.ts";

/**
 * One stroke as one line, key first: `d 300 r`, or a form's fields, `s flow=4.5 MAP=62`. `at` is the wall clock at the
 * first key, `08:05:10`, on the day the case was opened.
 */
export type Step = { readonly at: string; readonly type: string };

export type Script = {
  readonly id: string;
  readonly label: string;
  readonly protocol: Protocol;
  /** Initials of the person who opens the case. */
  readonly operator: string;
  readonly place: string;
  /** When the case is opened. */
  readonly start: Instant;
  /** In the order in which they are typed. */
  readonly steps: readonly Step[];
};
