/** Oxygen as it stands now: delivery, uptake and extraction, from readings and a gas that are not too old. */
import { minutesText } from "../format/duration.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { surfaceOf } from "./body-surface.ts";
import { type Figure, known, missing } from "./figure.ts";
import { flowIndexOf } from "./flow-plan.ts";
import {
  arterialSaturationSeries,
  haemoglobinSeries,
  type Latest,
  latestGas,
  latestOf,
  latestReading,
  type Moment,
  venousSaturationSeries,
  whyNot,
} from "./measured.ts";
import { oxygenContent, oxygenDeliveryIndex, oxygenExtraction, oxygenUptakeIndex } from "./oxygen.ts";

export type LiveOxygen = {
  /** L/min/m² */
  readonly flowIndex: Figure;
  /** DO2i, mL/min/m² */
  readonly delivery: Figure;
  /** VO2i, mL/min/m² */
  readonly uptake: Figure;
  /** O2ER, % */
  readonly extraction: Figure;
};

/** A latest value as a figure: with its age, or why it is not used. */
export const recent = (latest: Latest | null, unit: string, name: string): Figure =>
  latest?.holds
    ? known(latest.value, unit, `${latest.name} (${minutesText(latest.age)} old)`)
    : missing(unit, whyNot(latest, name));

export type Inputs = readonly Latest[];

/** The values that the arterial content is made of now. */
const contentInputs = ({ course, now }: Moment): readonly (Latest | null)[] => [
  latestOf(haemoglobinSeries(course), now),
  latestOf(arterialSaturationSeries(course), now),
  latestGas({ course, now }, "oxygen", "arterial"),
];

const recorded = (all: readonly (Latest | null)[]): Inputs => all.filter((one) => one !== null);

/** The values that delivery is made of now. */
export const deliveryInputs = (moment: Moment): Inputs =>
  recorded([latestReading(moment, "flow"), ...contentInputs(moment)]);

/** The values that extraction is made of now: flow falls out of it. */
export const extractionInputs = (moment: Moment): Inputs =>
  recorded([...contentInputs(moment), latestOf(venousSaturationSeries(moment.course), moment.now)]);

/** Delivery, uptake and extraction at the moment. */
export function liveOxygen(moment: Moment): LiveOxygen {
  const { course, now } = moment;
  const haemoglobin = recent(latestOf(haemoglobinSeries(course), now), "g/dL", "haemoglobin");
  const arterial = contentOf(
    haemoglobin,
    recent(latestOf(arterialSaturationSeries(course), now), "%", "arterial saturation"),
    recent(latestGas(moment, "oxygen", "arterial"), "mm[Hg]", "arterial pO2"),
    course.protocol,
    "arterial",
  );
  const venous = venousContent(moment, haemoglobin);
  const index = flowIndex(moment);
  return {
    flowIndex: index,
    delivery: explained(oxygenDeliveryIndex(arterial, index), arterial),
    uptake: explained(oxygenUptakeIndex(arterial, venous, index), arterial, venous),
    extraction: explained(oxygenExtraction(arterial, venous), arterial, venous),
  };
}

/** Pump flow by body surface, in L/min/m². */
const flowIndex = (moment: Moment): Figure =>
  flowIndexOf(recent(latestReading(moment, "flow"), "L/min", "pump flow"), surfaceOf(moment.course));

/** Content in mL/dL, or which of its parts is missing or too old. */
export function contentOf(
  haemoglobin: Figure,
  saturation: Figure,
  oxygen: Figure,
  { oxygen: constants }: Protocol,
  sample: "arterial" | "venous",
): Figure {
  const lacking = [haemoglobin, saturation, oxygen].filter(({ value }) => value === null);
  if (lacking.length > 0) return missing("mL/dL", lacking.map(({ working }) => working).join(", "));
  const [hb, sat, pO2] = [haemoglobin, saturation, oxygen].map(({ value }) => value ?? undefined);
  return oxygenContent(hb, sat, pO2, constants, sample);
}

/**
 * The venous content. A saturation in line comes without a pO2: its dissolved oxygen, about 1 % of the content, is then
 * left out, which the working says.
 */
function venousContent(moment: Moment, haemoglobin: Figure): Figure {
  const saturation = recent(
    latestOf(venousSaturationSeries(moment.course), moment.now),
    "%",
    "venous saturation",
  );
  const oxygen = recent(latestGas(moment, "oxygen", "venous"), "mm[Hg]", "venous pO2");
  const { protocol } = moment.course;
  if (oxygen.value !== null) return contentOf(haemoglobin, saturation, oxygen, protocol, "venous");
  const bound = contentOf(haemoglobin, saturation, { ...oxygen, value: 0 }, protocol, "venous");
  return bound.value === null
    ? bound
    : { ...bound, working: `${bound.working} (dissolved left out: ${oxygen.working})` };
}

/** A figure that also says how the contents in it were made, and on whose word. */
function explained(figure: Figure, ...contents: readonly Figure[]): Figure {
  if (figure.value === null) return figure;
  const working = [figure.working, ...contents.map((content) => content.working)].join("; content ");
  const sources = new Set(
    [figure.source, ...contents.map(({ source }) => source)].filter((one) => one !== undefined),
  );
  return known(figure.value, figure.unit, working, [...sources].join("; "));
}
