/** How much blood may be lost before the haematocrit is at its floor. */
import { fixed, plain } from "../format/number.ts";
import { derived } from "./derived.ts";
import type { Figure } from "./figure.ts";

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
