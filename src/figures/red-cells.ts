/** Blood needed for a wanted haematocrit. Added on top or replacing prime, the two differ, and each says which it is. */
import { fixed, plain } from "../format/number.ts";
import { derived } from "./derived.ts";
import type { Figure } from "./figure.ts";
import { TEACHING_PAGE } from "./haemodilution.ts";

/** What circulates, in mL and %, the haematocrit wanted of it, and that of the blood to be given, both in %. */
type Need = {
  readonly volume: Figure;
  readonly haematocrit: Figure;
  readonly wanted: number;
  readonly product: number;
};

/** Red cells that are short, in mL of cells = volume × (wanted − haematocrit); nothing where that is reached. */
export const cellsShort = ({ volume, haematocrit, wanted }: Need): Figure =>
  derived("mL", [volume, haematocrit], (ml, hct) =>
    hct < wanted
      ? {
          value: (ml * (wanted - hct)) / 100,
          working: `${fixed(ml)} mL × (${plain(wanted)} − ${plain(hct)}) %`,
          source: TEACHING_PAGE,
        }
      : { value: 0, working: `${plain(hct)} % is not below ${plain(wanted)} %` },
  );

/** Millilitres of blood to add on top = cells short / (product − wanted). Source: mass balance. */
export const bloodOnTop = (need: Need): Figure => {
  const { wanted, product } = need;
  const short = cellsShort(need);
  return derived("mL", [short], (cells) => {
    if (cells === 0) return { value: 0, working: short.working };
    return product > wanted
      ? {
          value: (cells * 100) / (product - wanted),
          working: `added on top: ${short.working} / (${plain(product)} − ${plain(wanted)}) %`,
          source: "mass balance",
        }
      : { value: null, working: `blood of ${plain(product)} % cannot raise it to ${plain(wanted)} %` };
  });
};

/**
 * Millilitres of blood that take the place of prime = cells short / product, so that the volume stays what it is. No
 * value where there is not that much `prime` without cells, in mL, to replace.
 */
export const bloodForPrime = (need: Need, prime: Figure): Figure => {
  const short = cellsShort(need);
  return derived("mL", [short, prime], (cells, primed) => {
    const ml = (cells * 100) / need.product;
    if (ml > primed)
      return { value: null, working: `${fixed(ml)} mL would have to replace ${fixed(primed)} mL of prime` };
    return cells === 0
      ? { value: 0, working: short.working }
      : {
          value: ml,
          working: `replacing prime: ${short.working} / ${plain(need.product)} %`,
          source: TEACHING_PAGE,
        };
  });
};
