/** Completeness of the run: events, physiology, gas, protection of the heart. Bypass that never was asks for none of it. */
import {
  grouped,
  has,
  type Item,
  presentIf,
  read,
  type State,
  standard,
  wasOn,
  whereUsed,
} from "./completeness-item.ts";
import type { Course } from "./run.ts";
import { intervalsOf } from "./spans.ts";

/** Each item as present, missing or not applicable, in the order of the list. */
export const completenessOfRun = (course: Course): Item[] => [
  ...eventItems(course),
  ...physiologyItems(course),
  ...protectionItems(course),
];

/** Every time it went on it has gone off again. */
const wentOff = ({ spans }: Course, what: string): State =>
  presentIf(
    intervalsOf(spans, what).length > 0,
    intervalsOf(spans, what).every(({ to }) => to !== null),
  );

const eventItems = (course: Course): Item[] => [
  ...grouped("events", standard(3), [
    ["bypass on", whereUsed(wasOn(course, "bypass"))],
    ["bypass off", wentOff(course, "bypass")],
    ["clamp on", whereUsed(wasOn(course, "clamp"))],
    ["clamp off", wentOff(course, "clamp")],
    ["circulatory arrest on and off", wentOff(course, "circulatory-arrest")],
    ["orders of flow or temperature", whereUsed(has(course, "flow") || has(course, "target"))],
    ["notes and comments", whereUsed(has(course, "note"))],
  ]),
];

function physiologyItems(course: Course): Item[] {
  const bypass = wasOn(course, "bypass");
  const onBypass = (...names: Parameters<typeof read>[1][]) => presentIf(bypass, read(course, ...names));
  const used = (...names: Parameters<typeof read>[1][]) => whereUsed(read(course, ...names));
  return [
    ...grouped("physiology", standard(3, 11, 12), [
      ["pump flow", onBypass("flow")],
      ["mean arterial pressure", onBypass("meanPressure")],
      ["line pressure", onBypass("linePressure")],
      ["central venous pressure, where measured", used("centralVenousPressure")],
    ]),
    ...grouped("temperature", standard(3, 7), [
      ["arterial outlet temperature", onBypass("arterialTemperature")],
      ["venous blood temperature", onBypass("venousTemperature")],
      [
        "temperature of the patient",
        onBypass("nasopharyngealTemperature", "bladderTemperature", "rectalTemperature"),
      ],
      ["water bath temperature, where read", used("waterTemperature")],
    ]),
    ...grouped("saturation", standard(7), [
      ["venous saturation", onBypass("venousSaturation")],
      ["cerebral saturation, where measured", used("cerebralLeft", "cerebralRight")],
    ]),
    ...grouped("gas", standard(10), [
      ["sweep gas", onBypass("sweep")],
      ["FiO2", onBypass("inspiredOxygen")],
      ["carbon dioxide added, where used", used("addedCarbonDioxide")],
      ["volatile agent, where used", used("volatile")],
    ]),
    ...grouped("drainage", standard(7), [
      [
        "vacuum on the reservoir, where used",
        presentIf(wasOn(course, "vacuum") || read(course, "vacuum"), read(course, "vacuum")),
      ],
    ]),
  ];
}

function protectionItems({ doses }: Course): Item[] {
  const given = doses.length > 0;
  const every = (test: (dose: Course["doses"][number]) => boolean) => presentIf(given, doses.every(test));
  return grouped("arrest solution", standard(7), [
    ["solution and its ratio", every(({ solution }) => solution !== undefined)],
    ["volume of every dose", every(({ ml }) => ml !== null)],
    ["route of every dose", every(({ route }) => route !== undefined)],
    ["begin and end of every dose", every(({ end }) => end !== null)],
    [
      "pressure of every dose",
      every(({ last, first }) => (last.entry.pressure ?? first.entry.pressure) !== undefined),
    ],
    [
      "temperature of every dose",
      every(({ last, first }) => (last.entry.temperature ?? first.entry.temperature) !== undefined),
    ],
  ]);
}
