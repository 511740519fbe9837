/** A case as it is handed on: what every format tells, and how it writes times. */
import { completenessOf } from "../figures/completeness.ts";
import type { Item } from "../figures/completeness-item.ts";
import { type Run, readRun } from "../figures/run.ts";
import { clockTime, dayOf, fromIso, type Instant, msOf, toIso } from "../format/instant.ts";
import type { CaseFile } from "../record/case.ts";
import { withoutNames } from "./without-names.ts";

/** What the caller found of the file that the case was read from. */
export type Kept = {
  /** SHA-256 of the file, in hex; `null` for one so damaged that the case is only what could be recovered. */
  readonly checksum: string | null;
  /** The hash of the last entry, which follows from all before it. */
  readonly seal: string | undefined;
  /** What is wrong with the file, a sentence each. */
  readonly faults: readonly string[];
};

export type ReportOptions = {
  readonly withoutNames?: boolean | undefined;
  /** Keeps what was written freely where names are left out. */
  readonly keepNotes?: boolean | undefined;
  readonly kept?: Kept | undefined;
};

export type Report = {
  /** The case as it is told, without names where they are left out. */
  readonly file: CaseFile;
  readonly run: Run;
  /** When the report was made; its offset is that of every time in it. */
  readonly at: Instant;
  readonly hasNames: boolean;
  /** Of the whole case, whatever is left out of the report. */
  readonly completeness: readonly Item[];
  readonly kept: Kept | undefined;
};

/** The report of a case as it stands at a moment, with all times as the clock on the wall of the theatre showed them. */
export function reportOf(file: CaseFile, moment: Instant, options: ReportOptions = {}): Report {
  const told = options.withoutNames ? withoutNames(file, options.keepNotes) : file;
  const opened = file.entries[0];
  const at = { ms: moment.ms, offset: opened ? offsetOf(opened.at) : moment.offset };
  return {
    file: told,
    run: readRun(told, at.ms),
    at,
    hasNames: !options.withoutNames,
    completeness: completenessOf(readRun(file, at.ms)),
    kept: options.kept,
  };
}

const offsetOf = (iso: string): number => fromIso(iso)?.offset ?? 0;

/** The day and the wall clock of a moment: `2026-03-04 10:42:30`. */
export const dayAndClock = ({ at: { offset } }: Report, ms: number): string =>
  `${dayOf(toIso({ ms, offset }))} ${clockTime({ ms, offset })}`;

/** The wall clock of a moment, with the day before it where it is not the day of the first entry. */
export function clockOf(report: Report, ms: number): string {
  const opened = report.file.entries[0];
  const told = dayAndClock(report, ms);
  const firstDay = opened && dayAndClock(report, msOf(opened.at)).slice(0, 10);
  return firstDay === told.slice(0, 10) ? told.slice(11) : told.slice(5);
}

/** `UTC+01:00` */
export const zoneOf = ({ at }: Report): string => `UTC${toIso(at).slice(-6)}`;
