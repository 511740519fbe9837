/** The prime: its fluids in all, the red cells in it, and what the tubing holds. */
import { plain } from "../format/number.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { derived, given } from "./derived.ts";
import { type Figure, known, missing } from "./figure.ts";
import type { Plan } from "./patient.ts";

type Part = { readonly fluid: string; readonly ml: number };

/** The fluids of the prime: as planned, else the protocol's usual ones. */
export const primeParts = (plan: Plan, { circuit }: Protocol): readonly Part[] => plan.prime ?? circuit.prime;

/** The prime in mL: the sum of its fluids. What fills the tubing is among them, and is not counted twice. */
export function primeTotal(plan: Plan, protocol: Protocol): Figure {
  const parts = primeParts(plan, protocol);
  if (parts.length === 0) return missing("mL", "no prime planned");
  return known(
    parts.reduce((sum, { ml }) => sum + ml, 0),
    "mL",
    parts.map(({ fluid, ml }) => `${plain(ml)} ${nameOf(fluid, protocol)}`).join(" + "),
    plan.prime ? "as planned" : sourcesOf(protocol),
  );
}

/** The red cells in the prime in mL: each blood product × its haematocrit. */
export function primeCells(plan: Plan, protocol: Protocol): Figure {
  const cells = primeParts(plan, protocol).flatMap(({ fluid, ml }) => {
    const product = protocol.fluidsIn.find(({ id }) => id === fluid)?.haematocrit;
    return product && product.value > 0 ? [{ ml, haematocrit: product.value }] : [];
  });
  return known(
    cells.reduce((sum, { ml, haematocrit }) => sum + (ml * haematocrit) / 100, 0),
    "mL",
    cells.map(({ ml, haematocrit }) => `${plain(ml)} mL × ${plain(haematocrit)} %`).join(" + ") ||
      "no blood in the prime",
  );
}

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

const nameOf = (fluid: string, { circuit, fluidsIn }: Protocol): string =>
  (circuit.prime.find((one) => one.fluid === fluid) ?? fluidsIn.find(({ id }) => id === fluid))?.name ??
  fluid;

const sourcesOf = ({ circuit }: Protocol): string | undefined => {
  const sources = new Set(circuit.prime.flatMap(({ source }) => source ?? []));
  return [...sources].join("; ") || undefined;
};
