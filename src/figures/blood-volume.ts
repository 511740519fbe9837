/** Blood volume: by weight bands, or by height, weight and sex after Nadler. */
import { fixed, plain } from "../format/number.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { heightOf, weightOf } from "./body.ts";
import { derived } from "./derived.ts";
import { type Figure, missing } from "./figure.ts";
import { bandFor } from "./full-flow.ts";
import type { Patient } from "./patient.ts";

type Sex = "male" | "female";

/** Litres = cube × H³ + slope × W + constant, H in metres and W in kg. */
const NADLER: Readonly<Record<Sex, { cube: number; slope: number; constant: number }>> = {
  male: { cube: 0.3669, slope: 0.03219, constant: 0.6041 },
  female: { cube: 0.3561, slope: 0.03308, constant: 0.1833 },
};

const NADLER_SOURCE =
  "Nadler SB, Hidalgo JU, Bloch T. Surgery 1962;51:224–232, as printed in general articles";

/** In mL/kg: the span named around what was found in bypass patients. Source: PMC4680658. */
export const PLAUSIBLE_BLOOD_VOLUME = { low: 30, high: 130, source: "PMC4680658" } as const;

/** Whether so many mL in so many kg can be a blood volume at all. */
export const bloodVolumeIsPlausible = (ml: number, weight: number): boolean =>
  ml / weight >= PLAUSIBLE_BLOOD_VOLUME.low && ml / weight <= PLAUSIBLE_BLOOD_VOLUME.high;

/** Blood volume in mL by the protocol's rule; where Nadler lacks something or cannot hold, by its bands. */
export function bloodVolume(patient: Patient, { body }: Protocol): Figure {
  const banded = bloodVolumeByBand(patient, body.bloodVolumeBands);
  if (body.bloodVolumeRule === "bands") return banded;
  const nadler = bloodVolumeByNadler(patient);
  if (nadler.value !== null) return nadler;
  if (banded.value === null) return banded;
  return { ...banded, working: `${banded.working} (by weight alone: ${nadler.working})` };
}

/** Blood volume in mL = mL/kg of the band × weight; a band includes its upper bound. */
export const bloodVolumeByBand = (patient: Patient, bands: Protocol["body"]["bloodVolumeBands"]): Figure =>
  derived("mL", [weightOf(patient)], (weight) => {
    const band = bandFor(bands, weight);
    return band
      ? {
          value: band.value * weight,
          working: `${plain(band.value)} mL/kg × ${plain(weight)} kg`,
          source: band.source,
        }
      : { value: null, working: `no step of the blood volume table holds ${plain(weight)} kg` };
  });

/**
 * Blood volume in mL after Nadler, from weight, height and sex. It was made for adults: where it gives what no blood
 * volume can be, as in a newborn or for a height in the wrong unit, the figure says so and has no value.
 */
export function bloodVolumeByNadler(patient: Patient): Figure {
  const { sex } = patient;
  if (sex !== "male" && sex !== "female") return missing("mL", "no sex recorded");
  const { cube, slope, constant } = NADLER[sex];
  return derived("mL", [weightOf(patient), heightOf(patient)], (weight, height) => {
    const metres = height / 100;
    const ml = nadlerLitres(weight, metres, sex) * 1000;
    return bloodVolumeIsPlausible(ml, weight)
      ? {
          value: ml,
          working: `Nadler: 1000 × (${cube} × ${plain(metres)}³ + ${slope} × ${plain(weight)} + ${constant})`,
          source: NADLER_SOURCE,
        }
      : { value: null, working: `Nadler gives ${fixed(ml / weight)} mL/kg: that cannot be` };
  });
}

/** Litres after Nadler; weight in kg, height in METRES. */
export function nadlerLitres(weight: number, metres: number, sex: Sex): number {
  const { cube, slope, constant } = NADLER[sex];
  return cube * metres ** 3 + slope * weight + constant;
}

/** A blood volume in mL as mL/kg. */
export const bloodVolumePerKg = (volume: Figure, patient: Patient): Figure =>
  derived("mL/kg", [volume, weightOf(patient)], (ml, weight) => ({
    value: ml / weight,
    working: `${fixed(ml)} mL / ${plain(weight)} kg`,
  }));
