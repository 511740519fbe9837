/** What a protocol may do but should know it does: numbers without a source, tables that end, readings that run out. */
import { type Fault, faultAt, type Path } from "./fault.ts";
import { eachTextAt, listAt, numberAt } from "./json-at.ts";

/** Every warning about a protocol that is otherwise valid. */
export const warningsAbout = (json: unknown): Fault[] => [
  ...heldTooShortly(json),
  ...endingTables(json),
  ...missingMarks(json),
  ...unmixable(json),
  ...withoutSource(json, []),
];

function heldTooShortly(json: unknown): Fault[] {
  return ["readings", "gas"].flatMap((what) => {
    const every = numberAt(json, ["watch", `${what}Every`, "value"]);
    const hold = numberAt(json, ["watch", `${what}Hold`, "value"]);
    if (every === undefined || hold === undefined || hold >= every) return [];
    const says = `values go stale after ${hold} min, before the next are due at ${every} min`;
    return [
      faultAt(["watch", `${what}Hold`, "value"], says, "let them hold at least until the next are due"),
    ];
  });
}

function endingTables(json: unknown): Fault[] {
  return ["bloodVolumeBands", "flowByTemperature", "flowByWeight"].flatMap((table) => {
    const steps = listAt(json, ["body", table]);
    const last = steps.length - 1;
    const end = numberAt(steps[last], ["upTo"]);
    if (end === undefined) return [];
    const says = `the table ends at ${end}, and there is no figure above it`;
    return [
      faultAt(["body", table, last, "upTo"], says, "write null in its last step for all that lies above"),
    ];
  });
}

/** Spans that advisories look for by these ids. */
const EXPECTED_SPANS = [
  "suckers",
  "vent",
  "ventilation",
  "circulatory-arrest",
  "cerebral-perfusion",
  "ultrafiltration",
];

function missingMarks(json: unknown): Fault[] {
  const ids = eachTextAt(json, ["marks"], "id");
  return EXPECTED_SPANS.filter((id) => !ids.includes(id)).map((id) =>
    faultAt(
      ["marks"],
      `there is no span "${id}", so nothing can be said about it`,
      "add it if your unit logs it",
    ),
  );
}

function unmixable(json: unknown): Fault[] {
  return listAt(json, ["fluidsIn"]).flatMap((fluid, i) => {
    const { sort, haematocrit } = fluid as { sort: string; haematocrit?: unknown };
    if (sort !== "blood" || haematocrit !== undefined) return [];
    return [
      faultAt(["fluidsIn", i], "a blood product without a haematocrit cannot be mixed", 'add "haematocrit"'),
    ];
  });
}

/** Every group with a number of its own that does not say where it was taken from. */
function withoutSource(json: unknown, path: Path): Fault[] {
  if (Array.isArray(json)) return json.flatMap((member, i) => withoutSource(member, [...path, i]));
  if (typeof json !== "object" || json === null) return [];
  const members = Object.entries(json);
  const needsOne = path.length > 0 && members.some(([, value]) => typeof value === "number");
  const hasOne = members.some(([key, value]) => SOURCE_NAMES.includes(key) && value !== "");
  return [
    ...(needsOne && !hasOne ? [faultAt(path, ...NO_SOURCE)] : []),
    ...members.flatMap(([key, value]) => withoutSource(value, [...path, key])),
  ];
}

const SOURCE_NAMES = ["source", "ratioSource"];

const NO_SOURCE = [
  "a number stands here without its source",
  'add "source", if only to say "common practice, no source"',
] as const;
