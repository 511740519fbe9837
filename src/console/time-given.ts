/** Times given on an entry line: `@10:42`, `@10:42:30`, `@-3` (minutes ago), `@-0:40`. */
import { MINUTE } from "../format/duration.ts";
import type { Instant } from "../format/instant.ts";
import { type Outcome, refused, taken } from "../format/outcome.ts";

const DAY = 24 * 60 * MINUTE;

const CLOCK = /^@(\d{1,2}):(\d\d)(?::(\d\d))?$/;
const AGO = /^@-(?:(\d{1,3})|(?:(\d{1,2}):)?(\d{1,3}):([0-5]\d))$/;

/** Whether a word is meant as a time: `@` and then digits, signs and colons only. */
export const looksLikeTime = (word: string): boolean => /^@[-+\d:.]*$/.test(word);

/** The moment a word means at `now`. A clock time is the nearest such moment that is not in the future. */
export function timeGiven(word: string, now: Instant): Outcome<Instant> {
  const clock = CLOCK.exec(word);
  if (clock)
    return clockMoment(clock, now) ?? refused(`${word} is no time of day: type @10:42 or @10:42:30.`);
  const ago = AGO.exec(word);
  if (ago) return taken({ ...now, ms: now.ms - agoMs(ago) });
  return refused(`${word} is not a time: type @10:42, @10:42:30, @-3 for three minutes ago, or @-0:40.`);
}

function clockMoment([, h, m, s = "0"]: RegExpExecArray, now: Instant): Outcome<Instant> | null {
  const [hours, minutes, seconds] = [Number(h), Number(m), Number(s)];
  if (hours > 23 || minutes > 59 || seconds > 59) return null;
  const wall = now.ms + now.offset * MINUTE;
  const midnight = Math.floor(wall / DAY) * DAY;
  const today = midnight + ((hours * 60 + minutes) * 60 + seconds) * 1000;
  return taken({ ...now, ms: (today > wall ? today - DAY : today) - now.offset * MINUTE });
}

/** `@-3` is minutes; with colons the last part is seconds: `@-0:40`, `@-1:05:00`. */
function agoMs([, alone, hours = "0", minutes = alone, seconds = "0"]: RegExpExecArray): number {
  return ((Number(hours) * 60 + Number(minutes)) * 60 + Number(seconds)) * 1000;
}
