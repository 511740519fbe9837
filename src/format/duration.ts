/** Lengths of time as text. */

const SECOND = 1000;
/** In milliseconds, as all times are. */
export const MINUTE = 60 * SECOND;
export const HOUR = 60 * MINUTE;

const two = (n: number) => String(n).padStart(2, "0");

/** `1:02:14`, or `4:09` under an hour. Whole seconds that have passed, never rounded up; below zero reads `0:00`. */
export function stopwatch(ms: number): string {
  const all = Math.max(0, Math.floor(ms / SECOND));
  const hours = Math.floor(all / 3600);
  const minutes = Math.floor(all / 60) % 60;
  const seconds = two(all % 60);
  return hours > 0 ? `${hours}:${two(minutes)}:${seconds}` : `${minutes}:${seconds}`;
}

/** Whole minutes that have passed: `64 min`; hours from ten of them on, days from two: `11 h`, `3 days`. */
export function minutesText(ms: number): string {
  const minutes = Math.max(0, Math.floor(ms / MINUTE));
  if (minutes < 600) return `${minutes} min`;
  const hours = Math.floor(minutes / 60);
  return hours < 48 ? `${hours} h` : `${Math.floor(hours / 24)} days`;
}

/** Time until a due moment: `due in 1:38`, `due now` in its last second, `overdue 2:05`. */
export function dueText(msLeft: number): string {
  if (msLeft >= SECOND) return `due in ${stopwatch(msLeft)}`;
  return msLeft > -SECOND ? "due now" : `overdue ${stopwatch(-msLeft)}`;
}
