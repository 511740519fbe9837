/** What is told of many cases together: figures that have a middle and a spread, and indicators that are met or not. */

type ManyFigure = {
  readonly label: string;
  /** UCUM code. */
  readonly unit: string;
  readonly decimals: number;
  /** Whether it reads as a stopwatch. */
  readonly isClock: boolean;
};

const of = (label: string, unit: string, decimals = 0): ManyFigure => ({
  label,
  unit,
  decimals,
  isClock: false,
});
const clock = (label: string): ManyFigure => ({ ...of(label, "s"), isClock: true });

/** In the order of an audit; seconds for times. */
export const MANY_FIGURES = {
  bypassTime: clock("bypass time"),
  arrestTime: clock("arrest (clamp) time"),
  circulatoryArrestTime: clock("circulatory arrest"),
  doses: of("doses of arrest solution", "1"),
  arrestGiven: of("arrest solution given", "mL"),
  heparinTotal: of("heparin in all", "[IU]"),
  heparinPerKg: of("heparin by weight", "[IU]/kg"),
  protamineGiven: of("protamine given", "mg"),
  deliveryLowest: of("lowest DO2i", "mL/min/m2"),
  deliveryBelowMinutes: of("DO2i below its threshold", "min", 1),
  haematocritLowest: of("lowest haematocrit", "%", 1),
  lactateHighest: of("highest lactate", "mmol/L", 1),
  fluidIn: of("fluid in", "mL"),
  urine: of("urine", "mL"),
  ultrafiltrate: of("ultrafiltrate", "mL"),
  net: of("net (in - out)", "mL"),
  netToPatient: of("net to the patient", "mL"),
} as const satisfies Readonly<Record<string, ManyFigure>>;

export type ManyFigureName = keyof typeof MANY_FIGURES;
export const MANY_FIGURE_NAMES = Object.keys(MANY_FIGURES) as readonly ManyFigureName[];

/** The indicators that a case meets or misses, by their ids; a name is the indicator's own, a word is for a narrow column. */
export const JUDGED = {
  glucose: { name: "glucose from 4 to 10 mmol/L", word: "glucose" },
  outlet: { name: "arterial outlet at most 37 °C", word: "outlet" },
  "carbon-dioxide": { name: "PaCO2 from 35 to 45 mmHg", word: "PaCO2" },
  "delivery-lowest": { name: "lowest DO2i at least 270 mL/min/m²", word: "DO2i" },
  act: { name: "every ACT on bypass at its target", word: "ACT" },
} as const;

export type JudgedId = keyof typeof JUDGED;
export const JUDGED_IDS = Object.keys(JUDGED) as readonly JudgedId[];
