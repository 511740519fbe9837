/** The figures' names as people say them, the group each belongs to, and how each is written. */
import type { Figure } from "../figures/figure.ts";
import { stopwatch } from "../format/duration.ts";
import { lookUp } from "../format/look-up.ts";
import { fixed, grouped } from "../format/number.ts";
import { unitText } from "../format/unit.ts";

/** In the order of a report. `now` holds what says something of a moment on bypass only. */
export const FIGURE_GROUPS = {
  times: "Times",
  arrest: "Arrest solution",
  balance: "Fluid balance",
  coagulation: "Heparin, protamine and ACT",
  run: "Over the whole run",
  plan: "Plan",
  now: "At this moment on bypass",
} as const;

export type FigureGroup = keyof typeof FIGURE_GROUPS;

type FigureWords = {
  readonly label: string;
  readonly group: FigureGroup;
  readonly decimals: number;
  /** Whether it reads as a stopwatch: `1:02:14`. */
  readonly isClock: boolean;
};

const of = (label: string, group: FigureGroup, decimals = 0): FigureWords => ({
  label,
  group,
  decimals,
  isClock: false,
});
const clock = (label: string, group: FigureGroup): FigureWords => ({ ...of(label, group), isClock: true });

const WORDS: Readonly<Record<string, FigureWords>> = {
  bypassTime: clock("bypass time", "times"),
  arrestTime: clock("arrest (clamp) time", "times"),
  reperfusionTime: clock("reperfusion on bypass", "times"),
  circulatoryArrestTime: clock("circulatory arrest", "times"),
  sinceDose: clock("since the last dose", "arrest"),
  arrestGiven: of("arrest solution given", "arrest"),
  arrestCrystalloid: of("crystalloid of it", "arrest"),
  fluidIn: of("fluid in", "balance"),
  urine: of("urine", "balance"),
  ultrafiltrate: of("ultrafiltrate", "balance"),
  otherOut: of("other volume out", "balance"),
  out: of("out in all", "balance"),
  net: of("net (in - out)", "balance"),
  returned: of("returned to the patient", "balance"),
  leftInPump: of("left in the pump", "balance"),
  netToPatient: of("net to the patient", "balance"),
  heparinTotal: of("heparin in all", "coagulation"),
  heparinFirst: of("first heparin", "coagulation"),
  heparinPerKg: of("heparin by weight", "coagulation"),
  heparinAge: clock("since the last heparin", "now"),
  protamineOnFirst: of("protamine on the first heparin", "coagulation"),
  protamineOnTotal: of("protamine on all heparin", "coagulation"),
  protamineGiven: of("protamine given", "coagulation"),
  lastAct: of("last ACT", "coagulation"),
  deliveryLowest: of("lowest DO2i", "run"),
  deliveryBelowMinutes: of("time below the DO2i threshold", "run", 1),
  deliveryBelowArea: of("area below the DO2i threshold", "run"),
  urineRate: of("urine on bypass", "run", 2),
  fullFlow: of("full flow", "plan", 2),
  flowIndex: of("flow index", "now", 2),
  delivery: of("DO2i", "now"),
  uptake: of("VO2i", "now"),
  extraction: of("oxygen extraction", "now", 1),
  resistance: of("systemic resistance", "now"),
  resistanceIndex: of("systemic resistance index", "now"),
  gradient: of("gradient of arterial and venous blood", "now", 1),
  warmingRate: of("warming rate", "now", 2),
  minutesToTarget: of("time to the target temperature", "now"),
};

/** The words for a figure; one that has none yet is told by its name. */
export const figureWords = (name: string): FigureWords =>
  lookUp(WORDS, name) ??
  of(
    name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`),
    "run",
    1,
  );

/** The value as a person reads it: a stopwatch, IU in groups of three, the rest with its unit. */
export function valueText(name: string, { value, unit }: Figure): string {
  const { decimals, isClock } = figureWords(name);
  if (isClock && value !== null) return stopwatch(value * 1000);
  const number = unit === "[IU]" ? grouped(value) : fixed(value, decimals);
  return value === null ? number : `${number} ${unitText(unit)}`.trim();
}
