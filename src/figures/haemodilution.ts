/** Haematocrit as blood and other fluids meet: predicted on bypass, and the ultrafiltrate that raises it. */
import { fixed, plain } from "../format/number.ts";
import { derived } from "./derived.ts";
import type { Figure } from "./figure.ts";

export const TEACHING_PAGE = "Haemodilution Calculations, teaching notes at perfusion.com.au";
const MASS_BALANCE = `${TEACHING_PAGE}; mass balance`;

/** What comes together when bypass begins; volumes in mL, the haematocrit in %. */
export type Meeting = {
  readonly bloodVolume: Figure;
  readonly haematocrit: Figure;
  /** All of the prime, whatever is in it. */
  readonly prime: Figure;
  /** Red cells, as cells and not as the product, that are in the prime. */
  readonly cells: number;
  /** Fluid without cells that enters before the sample, such as crystalloid of arrest solution. */
  readonly other: number;
  /** Prime that the patient's own blood pushed out and that never reaches the patient. */
  readonly displaced: number;
};

/** All that circulates, in mL = blood volume + prime + other − displaced. */
export const circulatingVolume = ({ bloodVolume, prime, other, displaced }: Meeting): Figure =>
  derived("mL", [bloodVolume, prime], (blood, primed) => ({
    value: blood + primed + other - displaced,
    working: whole(blood, primed, other, displaced),
  }));

/** Haematocrit on bypass in % = (blood volume × haematocrit + cells) / all that circulates. */
export const predictedHaematocrit = (meeting: Meeting): Figure => {
  const { bloodVolume, haematocrit, prime, cells, other, displaced } = meeting;
  return derived("%", [bloodVolume, haematocrit, prime], (blood, hct, primed) => ({
    value: (blood * hct + cells * 100) / (blood + primed + other - displaced),
    working: `(${fixed(blood)} × ${plain(hct)} %${term(" + ", cells, " cells")}) / ${whole(blood, primed, other, displaced)}`,
    source: MASS_BALANCE,
  }));
};

const whole = (blood: number, primed: number, other: number, displaced: number): string =>
  `(${fixed(blood)} + ${fixed(primed)}${term(" + ", other)}${term(" − ", displaced)}) mL`;

const term = (sign: string, ml: number, what = ""): string => (ml === 0 ? "" : `${sign}${fixed(ml)}${what}`);

/** Millilitres to ultrafilter for a wanted haematocrit in % = volume × (1 − haematocrit / wanted). */
export const ultrafiltrateFor = (wanted: number, volume: Figure, haematocrit: Figure): Figure =>
  derived("mL", [volume, haematocrit], (ml, hct) =>
    hct >= wanted
      ? { value: 0, working: `${plain(hct)} % is not below ${plain(wanted)} %` }
      : {
          value: ml * (1 - hct / wanted),
          working: `${fixed(ml)} mL × (1 − ${plain(hct)} % / ${plain(wanted)} %)`,
          source: MASS_BALANCE,
        },
  );
