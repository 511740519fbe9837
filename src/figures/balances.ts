/** Running balances: fluid in, urine and other volumes out, net, and what was returned. */
import { plain } from "../format/number.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { crystalloidMl, type Dose, givenMl } from "./doses.ts";
import { type Figure, known, missing } from "./figure.ts";
import { sumOf, type Volume } from "./volumes.ts";

export type Balances = {
  readonly arrestGiven: Figure;
  readonly arrestCrystalloid: Figure;
  readonly fluidIn: Figure;
  readonly urine: Figure;
  readonly ultrafiltrate: Figure;
  readonly otherOut: Figure;
  readonly out: Figure;
  readonly net: Figure;
  readonly returned: Figure;
};

const mL = (value: number | null, working: string, otherwise: string): Figure =>
  value === null ? missing("mL", otherwise) : known(value, "mL", working);

const sum = (terms: readonly (number | null)[]): number | null =>
  terms.every((term) => term === null) ? null : terms.reduce<number>((all, term) => all + (term ?? 0), 0);

/** All balances, in millilitres, from the volumes and the doses. */
export function readBalances(
  volumes: readonly Volume[],
  doses: readonly Dose[],
  protocol: Protocol,
): Balances {
  const told = doses.some(({ ml }) => ml !== null);
  const noDose = doses.length === 0 ? "no dose recorded" : "no volume said yet";
  const crystalloid = told ? crystalloidMl(doses) : null;
  const counted = protocol.solutionCountsAsFluid ? crystalloid : null;
  const volumesIn = sumOf(volumes, ({ direction }) => direction === "in");
  const urine = sumOf(volumes, ({ direction, fluid }) => direction === "out" && fluid === "urine");
  const ultrafiltrate = sumOf(
    volumes,
    ({ direction, fluid }) => direction === "out" && fluid === "ultrafiltrate",
  );
  const other = sumOf(
    volumes,
    ({ direction, fluid }) => direction === "out" && fluid !== "urine" && fluid !== "ultrafiltrate",
  );
  const fluidIn = sum([volumesIn, counted]);
  const out = sum([urine, ultrafiltrate, other]);
  return {
    arrestGiven: mL(told ? givenMl(doses) : null, dosesWorking(doses), noDose),
    arrestCrystalloid: mL(crystalloid, "each dose × crystalloid / (blood + crystalloid)", noDose),
    fluidIn: mL(fluidIn, inWorking(volumesIn, counted, protocol), "no volume in recorded"),
    urine: mL(urine, "all urine recorded", "no urine recorded"),
    ultrafiltrate: mL(ultrafiltrate, "all ultrafiltrate recorded", "no ultrafiltrate recorded"),
    otherOut: mL(other, "all other volumes out", "no other volume out recorded"),
    out: mL(
      out,
      `urine ${plain(urine ?? 0)} + ultrafiltrate ${plain(ultrafiltrate ?? 0)} + other ${plain(other ?? 0)}`,
      "no volume out recorded",
    ),
    net: mL(
      sum([fluidIn, out]) === null ? null : (fluidIn ?? 0) - (out ?? 0),
      `in ${orNone(fluidIn)} − out ${orNone(out)}`,
      "no volume recorded",
    ),
    returned: mL(
      sumOf(volumes, ({ direction }) => direction === "returned"),
      "all volumes returned to the patient",
      "nothing returned",
    ),
  };
}

/** Nothing recorded is said so, and not told as nought. */
const orNone = (value: number | null): string => (value === null ? "none recorded" : plain(value));

function dosesWorking(doses: readonly Dose[]): string {
  const silent = doses.filter(({ ml }) => ml === null).length;
  const text = doses.map(({ ml }) => (ml === null ? "?" : plain(ml))).join(" + ");
  return silent > 0 ? `${text} (${silent} without a volume yet)` : text;
}

function inWorking(volumes: number | null, crystalloid: number | null, protocol: Protocol): string {
  const part = protocol.solutionCountsAsFluid
    ? `${plain(crystalloid ?? 0)} crystalloid of arrest solution`
    : "crystalloid of arrest solution not counted (protocol)";
  return `volumes ${plain(volumes ?? 0)} + ${part}`;
}
