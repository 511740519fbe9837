/** What cannot be meant although each value is allowed: limits against each other, and names that name nothing. */
import { type Fault, faultAt, type Path, quoted } from "./fault.ts";
import { GAS_FIELDS, READING_FIELDS } from "./fields.ts";
import { at, eachTextAt, listAt, numberAt, textAt } from "./json-at.ts";
import { instead } from "./nearest.ts";
import { UNIT_SLIPS } from "./unit-slips.ts";

/** Every contradiction, also in a file that has other faults. */
export const contradictions = (json: unknown): Fault[] => [
  ...limitsInWrongOrder(json),
  ...doses(json),
  ...tables(json),
  ...namesThatNameNothing(json),
  ...wordsWithKeysOfTheirOwn(json),
  ...drugUnits(json),
  ...sharedKeys(json),
];

/** Two numbers of which the first must not lie above the second. */
type Order = { lower: Path; higher: Path; says: string; strictly?: boolean };

const ORDERS: readonly Order[] = [
  {
    lower: ["coagulation", "actForCannulation", "value"],
    higher: ["coagulation", "actForBypass", "value"],
    says: "the ACT asked for before cannulation lies above the one asked for before bypass",
  },
  {
    lower: ["coagulation", "protamineRatio", "value"],
    higher: ["coagulation", "protamineCap", "value"],
    says: "the protamine ratio lies above its own cap",
  },
  {
    lower: ["temperature", "warmingGradientWarm", "value"],
    higher: ["temperature", "warmingGradientCold", "value"],
    says: "the gradient for a warm outlet is wider than the one for a cold outlet",
  },
  {
    lower: ["temperature", "warmFrom", "value"],
    higher: ["temperature", "outletLimit", "value"],
    says: "the narrower gradient would begin at or above the outlet limit",
    strictly: true,
  },
  {
    lower: ["watch", "haematocritFloor", "value"],
    higher: ["circuit", "packedCellHaematocrit", "value"],
    says: "the haematocrit floor is not below that of packed cells, so none could reach it",
    strictly: true,
  },
];

function limitsInWrongOrder(json: unknown): Fault[] {
  return ORDERS.flatMap(({ lower, higher, says, strictly }) => {
    const [low, high] = [numberAt(json, lower), numberAt(json, higher)];
    if (low === undefined || high === undefined || low < high || (low === high && !strictly)) return [];
    return [faultAt(lower, `${says} (${low} against ${high})`, "put the wrong one of the two right")];
  });
}

function doses(json: unknown): Fault[] {
  return listAt(json, ["solutions"]).flatMap((solution, i) => {
    const path = ["solutions", i];
    const noParts = numberAt(solution, ["blood"]) === 0 && numberAt(solution, ["crystalloid"]) === 0;
    const parts = noParts
      ? [
          faultAt(
            path,
            "it has neither blood nor crystalloid",
            "write its parts, 4 and 1 for 4:1 blood to crystalloid",
          ),
        ]
      : [];
    return [
      ...parts,
      ...["first", "repeat"].flatMap((which) => ceiling(at(solution, [which]), [...path, which])),
    ];
  });
}

function ceiling(dose: unknown, path: Path): Fault[] {
  const [fixed, most] = [numberAt(dose, ["fixed", "value"]), numberAt(dose, ["ceiling", "value"])];
  if (fixed === undefined || most === undefined || fixed <= most) return [];
  const says = `the ceiling of ${most} mL lies below the fixed dose of ${fixed} mL`;
  return [faultAt([...path, "ceiling", "value"], says, "put one of the two right, or take the ceiling out")];
}

function tables(json: unknown): Fault[] {
  if (at(json, ["body", "fullFlowBy"]) !== "weight" || listAt(json, ["body", "flowByWeight"]).length > 0)
    return [];
  const says = "full flow is to follow the weight, but there is no table flowByWeight";
  return [faultAt(["body", "fullFlowBy"], says, 'add the table, or write "index"')];
}

function namesThatNameNothing(json: unknown): Fault[] {
  const fluids = eachTextAt(json, ["fluidsIn"], "id");
  return [
    ...listAt(json, ["circuit", "prime"]).flatMap((_, i) =>
      unknownName(json, ["circuit", "prime", i, "fluid"], fluids, "no fluid of this protocol has the id"),
    ),
    ...fieldFaults(json, "readingFields", READING_FIELDS),
    ...fieldFaults(json, "gasFields", GAS_FIELDS),
  ];
}

function fieldFaults(json: unknown, list: string, known: readonly string[]): Fault[] {
  const names = listAt(json, [list]);
  return names.flatMap((name, i) =>
    names.indexOf(name) < i && typeof name === "string"
      ? [faultAt([list, i], `${quoted(name)} is asked for twice`, "take one of the two out")]
      : unknownName(json, [list, i], known, "nothing the record measures is called"),
  );
}

function unknownName(json: unknown, path: Path, known: readonly string[], says: string): Fault[] {
  const name = textAt(json, path);
  return name === undefined || known.includes(name)
    ? []
    : [faultAt(path, `${says} ${quoted(name)}`, instead(name, known))];
}

/** Ids that a stroke already writes: another entry under the same name would count twice. */
const TAKEN: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  marks: { bypass: "b", clamp: "x" },
  fluidsOut: { urine: "u", "pump-blood": "r" },
  drugs: { heparin: "h", protamine: "p" },
};

function wordsWithKeysOfTheirOwn(json: unknown): Fault[] {
  const taken = Object.entries(TAKEN).flatMap(([list, keys]) =>
    listAt(json, [list]).flatMap((member, i) => {
      const id = textAt(member, ["id"]) ?? "";
      if (!Object.hasOwn(keys, id)) return [];
      return [
        faultAt([list, i, "id"], `"${id}" has a key of its own (${keys[id]})`, "take it out of this list"),
      ];
    }),
  );
  const waysOfMoments = listAt(json, ["marks"]).flatMap((mark, i) =>
    at(mark, ["sort"]) === "moment" && at(mark, ["ways"]) !== undefined
      ? [
          faultAt(
            ["marks", i, "ways"],
            "a moment is not done in ways",
            'take them out, or write "span" as its sort',
          ),
        ]
      : [],
  );
  return [...taken, ...waysOfMoments];
}

function drugUnits(json: unknown): Fault[] {
  return listAt(json, ["drugs"]).flatMap((drug, i) => {
    const unit = textAt(drug, ["unit"])?.toLowerCase() ?? "";
    const code = Object.hasOwn(UNIT_SLIPS, unit) ? UNIT_SLIPS[unit] : undefined;
    if (code === undefined || code === at(drug, ["unit"])) return [];
    return [
      faultAt(["drugs", i, "unit"], `${quoted(at(drug, ["unit"]))} is not a UCUM unit`, `write "${code}"`),
    ];
  });
}

function sharedKeys(json: unknown): Fault[] {
  const keys = at(json, ["keys"]);
  if (typeof keys !== "object" || keys === null || Array.isArray(keys)) return [];
  const owner = new Map<unknown, string>();
  return Object.entries(keys).flatMap(([stroke, key]) => {
    const before = owner.get(key);
    if (before === undefined) owner.set(key, stroke);
    const says = `the key ${quoted(key)} already stands for ${quoted(before)}`;
    return before === undefined ? [] : [faultAt(["keys", stroke], says, "choose another key")];
  });
}
