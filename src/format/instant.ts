/** A point in time as the record keeps it: milliseconds since the epoch, and the wall clock's offset beside it. */
import { MINUTE } from "./duration.ts";

/** `ms` since 1970-01-01T00:00Z; `offset` in minutes east of UTC, so that the wall time survives a journey. */
export type Instant = { readonly ms: number; readonly offset: number };

const PATTERN = /^\d{4}-\d\d-(\d\d)T(\d\d):\d\d:\d\d(?:\.\d+)?(Z|[+-]\d\d:\d\d)$/;

const two = (n: number) => String(n).padStart(2, "0");

/** The instant in ISO 8601 with milliseconds and offset: `2026-03-04T10:42:30.120+01:00`. */
export function toIso({ ms, offset }: Instant): string {
  const wall = new Date(ms + offset * MINUTE).toISOString().slice(0, -1);
  const size = Math.abs(offset);
  return `${wall}${offset < 0 ? "-" : "+"}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}

/** Reads ISO 8601 with an offset or `Z`; `null` when it is anything else or no such day exists. */
export function fromIso(text: string): Instant | null {
  const found = PATTERN.exec(text);
  const ms = found ? Date.parse(text) : Number.NaN;
  if (!found || Number.isNaN(ms)) return null;
  const [, day, hour, zone = ""] = found;
  const offset = offsetOf(zone);
  const wall = new Date(ms + offset * MINUTE);
  // The engine reads 30 February as 2 March, and 24:00 as the next day.
  const exists = wall.getUTCDate() === Number(day) && wall.getUTCHours() === Number(hour);
  return exists ? { ms, offset } : null;
}

/** Milliseconds of a time already known to be valid (it has passed the schema). */
export const msOf = (iso: string): number => Date.parse(iso);

function offsetOf(zone: string): number {
  if (zone === "Z") return 0;
  const [hours, minutes] = [Number(zone.slice(1, 3)), Number(zone.slice(4, 6))];
  return (zone.startsWith("-") ? -1 : 1) * (hours * 60 + minutes);
}

/** The wall clock at an instant, `10:42:30`. */
export const clockTime = (instant: Instant): string => toIso(instant).slice(11, 19);

/** The wall clock of a recorded time, as it was where it was written: `10:42:30`. */
export const clockTimeOf = (iso: string): string => iso.slice(11, 19);

/** The calendar day of a recorded time, as it was where it was written: `2026-03-04`. */
export const dayOf = (iso: string): string => iso.slice(0, 10);
