/** Body surface area from weight and height. */
import { fixed, plain } from "../format/number.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { type Figure, known, missing } from "./figure.ts";
import type { Patient } from "./patient.ts";

type Formula = {
  readonly name: string;
  readonly coefficient: number;
  readonly weight: number;
  readonly height: number;
  readonly source: string;
};

/** All three are a coefficient × W^a × H^b, W in kg and H in cm, giving m². */
export const SURFACE_FORMULAS = {
  dubois: {
    name: "DuBois",
    coefficient: 0.007184,
    weight: 0.425,
    height: 0.725,
    source: "Du Bois D, Du Bois EF. Arch Intern Med 1916;17:863–871",
  },
  mosteller: {
    name: "Mosteller",
    coefficient: 1 / 60,
    weight: 0.5,
    height: 0.5,
    source: "Mosteller RD. N Engl J Med 1987;317:1098",
  },
  haycock: {
    name: "Haycock",
    coefficient: 0.024265,
    weight: 0.5378,
    height: 0.3964,
    source: "Haycock GB, Schwartz GJ, Wisotsky DH. J Pediatr 1978;93:62–66",
  },
} as const satisfies Record<string, Formula>;

export type SurfaceFormula = keyof typeof SURFACE_FORMULAS;

/** Body surface area in m² of a patient, by the protocol's formula. */
export const surfaceOf = ({ patient, protocol }: { patient: Patient; protocol: Protocol }): Figure =>
  bodySurface(protocol.body.surfaceFormula, patient.weight, patient.height);

/** Body surface area in m²; weight in kg, height in cm. Source: the paper of each formula. */
export function bodySurface(
  formula: SurfaceFormula,
  weight: number | undefined,
  height: number | undefined,
): Figure {
  if (weight === undefined || height === undefined)
    return missing("m2", weight === undefined ? "no weight recorded" : "no height recorded");
  const { name, coefficient, weight: a, height: b, source } = SURFACE_FORMULAS[formula];
  const area = coefficient * weight ** a * height ** b;
  const working =
    formula === "mosteller"
      ? `√(${plain(weight)} kg × ${plain(height)} cm / 3600)`
      : `${fixed(coefficient, 6)} × (${plain(weight)} kg)^${a} × (${plain(height)} cm)^${b}`;
  return known(area, "m2", `${name}: ${working}`, source);
}
