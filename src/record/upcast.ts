/** Older file versions brought up to the present one, a step a version. Version 1 is the first and the present one. */

type Json = object & { version?: unknown };

/** Steps by the version they start from; a frozen sample of every past version stays in the tests. */
const STEPS: Readonly<Record<number, (json: Json) => Json>> = {};

/** The file in the present version's shape; what is not a known version is left for the schema to refuse. */
export function upcast(json: Json): Json {
  let now = json;
  for (let step = stepFrom(now); step; step = stepFrom(now)) now = step(now);
  return now;
}

const stepFrom = ({ version }: Json) => (typeof version === "number" ? STEPS[version] : undefined);
