/** Heparin, protamine and ACT. */
import { MINUTE } from "../format/duration.ts";
import { plain } from "../format/number.ts";
import type { Protocol } from "../protocol/protocol.ts";
import type { EntryOf } from "../record/entry.ts";
import { type Fact, lastOf, ofKind } from "../record/standing.ts";
import { type Figure, known, missing } from "./figure.ts";

type Given = readonly Fact<EntryOf<"drug">>[];

export type Coagulation = {
  readonly heparin: Given;
  readonly protamine: Given;
  readonly heparinTotal: Figure;
  readonly heparinFirst: Figure;
  readonly heparinPerKg: Figure;
  readonly protamineGiven: Figure;
  readonly protamineSuggested: Figure;
  readonly protamineOnFirst: Figure;
  readonly protamineOnTotal: Figure;
  readonly protamineMost: Figure;
  /** When heparin was last given to the patient, in milliseconds since the epoch. */
  readonly lastHeparin: number | null;
};

/** What follows from the entries, and the age of the last heparin in milliseconds; `null` where there is none. */
export type CoagulationNow = Coagulation & { readonly heparinAge: number | null };

/** What follows at `now`, in milliseconds since the epoch. */
export const coagulationAt = (coagulation: Coagulation, now: number): CoagulationNow => ({
  ...coagulation,
  heparinAge: coagulation.lastHeparin === null ? null : Math.max(0, now - coagulation.lastHeparin),
});

/** The route of heparin that goes into the prime: it counts in the total and is no dose of the patient's. */
export const IN_PRIME = "prime";

const amountOf = (doses: Given): number => doses.reduce((sum, { entry }) => sum + entry.amount, 0);

/** Totals in IU and mg; `weight` in kg. The suggestion is ratio × base / 100, the base as the protocol says. */
export function readCoagulation(
  facts: readonly Fact[],
  protocol: Protocol,
  weight: number | undefined,
): Coagulation {
  const drugs = ofKind(facts, "drug");
  const heparin = drugs.filter(({ entry }) => entry.name === "heparin");
  const protamine = drugs.filter(({ entry }) => entry.name === "protamine");
  const toPatient = heparin.filter(({ entry }) => entry.route !== IN_PRIME);
  const first = toPatient[0]?.entry.amount;
  const total = heparin.length === 0 ? undefined : amountOf(heparin);
  const onFirst = protamineFor(first, "first", protocol);
  const onTotal = protamineFor(total, "total", protocol);
  return {
    heparin,
    protamine,
    heparinTotal: heparinFigure(total, heparin.map(({ entry }) => plain(entry.amount)).join(" + ")),
    heparinFirst: heparinFigure(first, "first dose"),
    heparinPerKg: perKg(total, weight),
    protamineGiven:
      protamine.length === 0
        ? missing("mg", "no protamine recorded")
        : known(amountOf(protamine), "mg", "all protamine recorded"),
    protamineSuggested: protocol.coagulation.protamineBase === "first" ? onFirst : onTotal,
    protamineOnFirst: onFirst,
    protamineOnTotal: onTotal,
    protamineMost: protamineAt(total, "total", protocol.coagulation.protamineCap),
    lastHeparin: toPatient.at(-1)?.at ?? null,
  };
}

const heparinFigure = (amount: number | undefined, working: string): Figure =>
  amount === undefined ? missing("[IU]", "no heparin recorded") : known(amount, "[IU]", working);

function perKg(total: number | undefined, weight: number | undefined): Figure {
  if (total === undefined) return missing("[IU]/kg", "no heparin recorded");
  if (weight === undefined) return missing("[IU]/kg", "no weight recorded");
  return known(total / weight, "[IU]/kg", `${plain(total)} IU / ${plain(weight)} kg`);
}

const protamineFor = (heparin: number | undefined, base: "first" | "total", protocol: Protocol): Figure =>
  protamineAt(heparin, base, protocol.coagulation.protamineRatio);

/** Milligrams of protamine for an amount of heparin in IU at so many milligrams for each 100 IU. */
export function protamineAt(
  heparin: number | undefined,
  base: "first" | "total",
  ratio: { value: number; source?: string | undefined },
): Figure {
  if (heparin === undefined) return missing("mg", "no heparin recorded");
  const words = base === "first" ? "first heparin" : "all heparin";
  return known(
    (heparin * ratio.value) / 100,
    "mg",
    `${plain(ratio.value)} mg for each 100 IU of ${words} ${plain(heparin)} IU`,
    ratio.source,
  );
}

export type LastAct = {
  readonly seconds: number;
  readonly age: number;
  readonly target: number;
  /** Met at the target, not only above it. */
  readonly met: boolean;
  /** When the next one is due, in milliseconds since the epoch. */
  readonly due: number;
};

/** The last ACT against the target for bypass. */
export function lastAct(facts: readonly Fact[], protocol: Protocol, now: number): LastAct | null {
  const last = lastOf(facts, "act");
  if (!last) return null;
  const target = protocol.coagulation.actForBypass.value;
  const { seconds } = last.entry;
  const due = last.at + protocol.coagulation.actRecheck.value * MINUTE;
  return { seconds, age: Math.max(0, now - last.at), target, met: isActMet(seconds, target), due };
}

/** An ACT meets its target at the target. */
export const isActMet = (seconds: number, target: number): boolean => seconds >= target;
