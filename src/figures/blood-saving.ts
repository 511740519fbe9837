/** Blood that may be lost, and blood that is diluted on purpose and concentrated again. */
import { fixed, plain } from "../format/number.ts";
import { derived } from "./derived.ts";
import type { Figure } from "./figure.ts";
import { type Blood, TEACHING_PAGE } from "./haemodilution.ts";

/** Blood loss that can be borne, in mL = blood volume × (haematocrit − floor) / haematocrit; haematocrits in %. */
export const allowableBloodLoss = (bloodVolume: Figure, haematocrit: Figure, floor: number): Figure =>
  derived("mL", [bloodVolume, haematocrit], (ml, hct) =>
    hct > floor
      ? {
          value: (ml * (hct - floor)) / hct,
          working: `${fixed(ml)} mL × (${plain(hct)} − ${plain(floor)}) / ${plain(hct)} %`,
          source: "Iowa Head and Neck Protocols, maximum allowable blood loss",
        }
      : { value: 0, working: `${plain(hct)} % is not above ${plain(floor)} %` },
  );

/** Fluid without cells, in mL, that thins blood to a haematocrit in % = volume × haematocrit / wanted − volume. */
export const fluidToDilute = (volume: Figure, haematocrit: Figure, wanted: number): Figure =>
  derived("mL", [volume, haematocrit], (ml, hct) => ({
    value: Math.max(0, (ml * hct) / wanted - ml),
    working: `${fixed(ml)} mL × ${plain(hct)} % / ${plain(wanted)} % − ${fixed(ml)} mL`,
    source: TEACHING_PAGE,
  }));

/**
 * How many units concentrated from blood of `from` % take an excess of fluid, in mL, away: each unit holds as many
 * cells as volume × haematocrit / from of that blood, and what it is smaller by is discarded.
 */
export const unitsToConcentrate = (excess: Figure, unit: Blood, from: number): Figure =>
  derived("1", [excess], (ml) => {
    const discarded = (unit.volume * unit.haematocrit) / from - unit.volume;
    return {
      value: discarded > 0 ? ml / discarded : null,
      working:
        discarded > 0
          ? `${fixed(ml)} mL / ${fixed(discarded)} mL discarded for each unit of ${plain(unit.volume)} mL`
          : `a unit of ${plain(unit.haematocrit)} % is no thicker than blood of ${plain(from)} %`,
      source: TEACHING_PAGE,
    };
  });
