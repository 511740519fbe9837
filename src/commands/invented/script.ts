/** What an invented case is made of: who and where, and every stroke or form with its time of day. */
import type { Instant } from "../../format/instant.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import type { Draft } from "../../record/entry.ts";

/** One stroke as it is typed on the console, key first, without Enter: `d 300 r`. */
export type StrokeStep = { readonly at: string; readonly type: string };

/** What a form would have written. */
export type FormStep = { readonly at: string; readonly form: Draft };

/** `at` is the wall clock at the first key, `08:05:10`, on the day the case was opened. */
export type Step = StrokeStep | FormStep;

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

export const isStroke = (step: Step): step is StrokeStep => "type" in step;
