/** Everything a case says of itself at one moment: the one place where the figures are put together. */
import { msOf } from "../format/instant.ts";
import { lately } from "../format/lately.ts";
import type { Protocol } from "../protocol/protocol.ts";
import type { CaseFile } from "../record/case.ts";
import type { Entry, EntryOf } from "../record/entry.ts";
import { type Fact, lastOf, ofKind, type Record, standing } from "../record/standing.ts";
import { type Balances, readBalances } from "./balances.ts";
import {
  type Coagulation,
  type CoagulationNow,
  coagulationAt,
  type LastAct,
  lastAct,
  readCoagulation,
} from "./coagulation.ts";
import { type Dose, readDoses, runningDose } from "./doses.ts";
import { type Figure, missing } from "./figure.ts";
import { fullFlow } from "./full-flow.ts";
import { type NextDose, nextDose } from "./next-dose.ts";
import { type Patient, type Plan, patientOf, planOf } from "./patient.ts";
import { type Phase, phaseOf } from "./phase.ts";
import { leftInPump, netToPatient, type PumpVolume } from "./pump-volume.ts";
import { openReminders, type Reminder } from "./reminders.ts";
import { intervalsOf, openInterval, readSpans, type Spans } from "./spans.ts";
import { readTimers, type Timers } from "./timers.ts";
import { readVolumes, type Volume } from "./volumes.ts";

/** What follows from the entries alone, whatever the time is. */
export type Course = {
  readonly record: Record;
  readonly protocol: Protocol;
  readonly patient: Patient;
  readonly plan: Plan;
  readonly spans: Spans;
  readonly doses: readonly Dose[];
  readonly volumes: readonly Volume[];
  readonly balances: Balances;
  readonly coagulation: Coagulation;
  readonly fullFlow: Figure;
  readonly phase: Phase;
  readonly reminders: readonly Reminder[];
  /** Initials of the person who runs the pump. */
  readonly operator: string;
  /** The moment the case was closed, in milliseconds since the epoch; `null` while it is open. */
  readonly closedAt: number | null;
};

/** What a case says at `now`. */
export type Run = {
  readonly course: Course;
  readonly now: number;
  readonly timers: Timers;
  readonly running: Dose | undefined;
  readonly nextDose: NextDose;
  readonly act: LastAct | null;
  readonly coagulation: CoagulationNow;
  readonly pump: PumpVolume;
  readonly netToPatient: Figure;
  readonly flowOrder: Fact<EntryOf<"flow">> | undefined;
  readonly targetOrder: Fact<EntryOf<"target">> | undefined;
};

/** The course of a case. A list of entries read lately costs nothing to read again. */
export const courseOf = ({ entries, protocol }: Pick<CaseFile, "entries" | "protocol">): Course =>
  coursesOf(entries)(protocol);

const coursesOf = lately((entries: readonly Entry[]) =>
  lately((protocol: Protocol) => readCourse(entries, protocol)),
);

function readCourse(entries: readonly Entry[], protocol: Protocol): Course {
  const record = standing(entries);
  const { facts } = record;
  const [patient, plan, spans] = [patientOf(facts), planOf(facts), readSpans(facts)];
  const doses = readDoses(facts, protocol, plan.solution);
  const volumes = readVolumes(facts);
  const full = fullFlow(patient, plan, protocol);
  return {
    record,
    protocol,
    patient,
    plan,
    spans,
    doses,
    volumes,
    balances: readBalances(volumes, doses, protocol),
    coagulation: readCoagulation(facts, protocol, patient.weight),
    fullFlow: full,
    phase: phaseOf(facts, spans, full.value),
    reminders: openReminders(facts),
    operator: operatorOf(entries),
    closedAt: closedAt(entries),
  };
}

/** Everything at `now` (milliseconds since the epoch). A closed case stands still at the moment it was closed. */
export function readRun(file: Pick<CaseFile, "entries" | "protocol">, now: number): Run {
  const course = courseOf(file);
  const moment = course.closedAt === null ? now : Math.min(now, course.closedAt);
  const { facts } = course.record;
  const pump = leftInPump(facts, course.volumes, course.protocol, hasEnded(course), moment);
  return {
    course,
    now: moment,
    timers: readTimers(course.spans, moment),
    running: runningDose(course.doses),
    nextDose: nextDose(facts, course.doses, intervalsOf(course.spans, "clamp"), moment),
    act: lastAct(facts, course.protocol, moment),
    coagulation: coagulationAt(course.coagulation, moment),
    pump,
    netToPatient: hasEnded(course)
      ? netToPatient(course.balances.net, pump.left)
      : missing("mL", "bypass has not ended"),
    flowOrder: lastOf(facts, "flow"),
    targetOrder: lastOf(facts, "target"),
  };
}

/** Whether bypass has been on and is off for good: in circulatory arrest it only pauses. A clamp left on says nothing. */
const hasEnded = ({ spans }: Course): boolean => {
  const bypass = intervalsOf(spans, "bypass");
  const paused = openInterval(intervalsOf(spans, "circulatory-arrest")) !== undefined;
  return bypass.length > 0 && openInterval(bypass) === undefined && !paused;
};

/** Whether a span is on by the record. */
export const isOn = (course: Course, what: string): boolean =>
  openInterval(intervalsOf(course.spans, what)) !== undefined;

/** Who runs the pump: the last to open, take over or reopen, as far as it was not struck out. */
export function operatorOf(entries: readonly Entry[]): string {
  const { facts } = standing(entries);
  const changes = (["opened", "operator", "reopened"] as const).flatMap((kind) => ofKind(facts, kind));
  return changes.toSorted((a, b) => a.entry.seq - b.entry.seq).at(-1)?.entry.operator ?? "";
}

function closedAt(entries: readonly Entry[]): number | null {
  const last = entries.findLast(({ kind }) => kind === "closed" || kind === "reopened");
  return last?.kind === "closed" ? msOf(last.at) : null;
}
