/** The prime: its fluids in all, the red cells in it, and what the tubing holds. */
import { plain } from "../format/number.ts";
import { fluidName } from "../protocol/names.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { derived, given } from "./derived.ts";
import { type Figure, known, missing } from "./figure.ts";
import type { Plan } from "./patient.ts";

type Part = { readonly fluid: string; readonly ml: number };

/** The fluids of the prime: as planned, else the protocol's usual ones. */
const primeParts = (plan: Plan, { circuit }: Protocol): readonly Part[] => plan.prime ?? circuit.prime;

/** The prime in mL: the sum of its fluids. What fills the tubing is among them, and is not counted twice. */
export function primeTotal(plan: Plan, protocol: Protocol): Figure {
  const parts = primeParts(plan, protocol);
  if (parts.length === 0) return missing("mL", "no prime planned");
  return known(
    parts.reduce((sum, { ml }) => sum + ml, 0),
    "mL",
    parts.map(({ fluid, ml }) => `${plain(ml)} mL ${nameOf(fluid, protocol)}`).join(" + "),
    plan.prime ? "as planned" : sourcesOf(protocol),
  );
}

/** The red cells in the prime, in mL of cells: each blood product × its haematocrit. */
export function primeCells(plan: Plan, protocol: Protocol): Figure {
  const products = primeProducts(plan, protocol);
  return known(
    products.reduce((sum, { ml, haematocrit }) => sum + (ml * haematocrit) / 100, 0),
    "mL",
    products.map(({ ml, haematocrit }) => `${plain(ml)} mL × ${plain(haematocrit)} %`).join(" + ") ||
      NO_BLOOD,
  );
}

/** What may be replaced by blood, in mL: the prime in all without the blood that is in it already. */
export const replaceablePrime = (prime: Figure, plan: Plan, protocol: Protocol): Figure =>
  derived("mL", [prime], (ml) => {
    const blood = primeProducts(plan, protocol).reduce((sum, product) => sum + product.ml, 0);
    return { value: Math.max(0, ml - blood), working: `${plain(ml)} − ${plain(blood)} mL of blood` };
  });

const NO_BLOOD = "no blood in the prime";

const primeProducts = (plan: Plan, protocol: Protocol) =>
  primeParts(plan, protocol).flatMap(({ fluid, ml }) => {
    const haematocrit = protocol.fluidsIn.find(({ id }) => id === fluid)?.haematocrit?.value ?? 0;
    return haematocrit > 0 ? [{ ml, haematocrit }] : [];
  });

/** What a length of tubing holds, in mL = π/4 × bore² × length; bore in mm, length in m. */
export const tubingVolume = (bore: number, metres: number | undefined): Figure =>
  derived("mL", [given(metres, "m", "length")], (length) => ({
    value: (Math.PI / 4) * bore ** 2 * length,
    working: `π/4 × (${plain(bore)} mm)² × ${plain(length)} m`,
    source: "volume of a cylinder",
  }));

/** What all the planned tubing holds, in mL. */
export function tubingTotal(plan: Plan, { circuit }: Protocol): Figure {
  const lengths = (plan.tubing ?? []).flatMap(({ id, metres }) => {
    const line = circuit.tubing.find((one) => one.id === id);
    return line ? [{ name: line.name, metres, volume: tubingVolume(line.boreMm, metres) }] : [];
  });
  if (lengths.length === 0) return missing("mL", "no length of tubing planned");
  return derived(
    "mL",
    lengths.map(({ volume }) => volume),
    (...volumes) => ({
      value: volumes.reduce((sum, ml) => sum + ml, 0),
      working: lengths.map(({ name, metres }) => `${plain(metres)} m of ${name}`).join(" + "),
      source: "π/4 × bore² × length",
    }),
  );
}

const nameOf = (fluid: string, protocol: Protocol): string =>
  protocol.circuit.prime.find((one) => one.fluid === fluid)?.name ??
  fluidName("in", fluid, protocol) ??
  fluid;

const sourcesOf = ({ circuit }: Protocol): string | undefined => {
  const sources = new Set(circuit.prime.flatMap(({ source }) => source ?? []));
  return [...sources].join("; ") || undefined;
};
