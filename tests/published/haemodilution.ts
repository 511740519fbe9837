/** Haematocrit of mixtures, and the blood, fluid or filtrate that changes it. */
import { known } from "../../src/figures/figure.ts";
import {
  circulatingVolume,
  type Meeting,
  predictedHaematocrit,
  ultrafiltrateFor,
} from "../../src/figures/haemodilution.ts";
import { bloodForPrime, bloodOnTop, cellsShort } from "../../src/figures/red-cells.ts";
import { group, type Section } from "./check.ts";

const PAGE = "Haemodilution Calculations, teaching notes at perfusion.com.au";
const BALANCE = "mass balance on the teaching page's rule";

const mL = (value: number) => known(value, "mL", "given");
const percent = (value: number) => known(value, "%", "given");

const meeting = (blood: number, hct: number, prime: number, more: Partial<Meeting> = {}): Meeting => ({
  bloodVolume: mL(blood),
  haematocrit: percent(hct),
  prime: mL(prime),
  cells: 0,
  other: 0,
  displaced: 0,
  ...more,
});
const predicted = (...met: Parameters<typeof meeting>) => predictedHaematocrit(meeting(...met));

/** The haematocrit of a blood and a fluid, or of two bloods; volumes in mL, haematocrits in %. */
export const mixed = (volume: number, hct: number, added: number, addedHct: number) =>
  predicted(volume, hct, added, { cells: (added * addedHct) / 100 });

/** The page's patient: 5000 mL at 25 % met by 2000 mL of prime, with 25 % wanted again. */
const need = (product: number) => ({
  volume: mL(7000),
  haematocrit: mixed(5000, 25, 2000, 0),
  wanted: 25,
  product,
});

/** What 7000 mL at 25 % are thinned by to 15 %: as much as has to leave for 25 % again. */
const thinning = ultrafiltrateFor(25, mL((7000 * 25) / 15), percent(15));
/** What leaves as a unit of 250 mL at 60 % is made of blood of 15 %. */
const discarded = ultrafiltrateFor(60, mL((250 * 60) / 15), percent(15));
export const unitsToConcentrate = () => (thinning.value ?? Number.NaN) / (discarded.value ?? Number.NaN);

export const haemodilution: Section = {
  name: "haemodilution",
  checks: [
    ...group({ what: "haematocrit of a mixture", source: PAGE, sureness: "Q" }, [
      ["part-i", "5000 mL at 43.9 % and 500 mL of fluid", 39.9, 0.05, () => mixed(5000, 43.9, 500, 0)],
      ["part-ii", "5000 mL at 25 % and 500 mL at 35 %", 25.9, 0.05, () => mixed(5000, 25, 500, 35)],
    ]),
    ...group({ what: "red cells in all", source: PAGE, sureness: "Q" }, [
      [
        "part-iii-a",
        "7000 mL wanted at 25 %",
        1750,
        1e-9,
        () => cellsShort({ ...need(60), haematocrit: percent(0) }),
      ],
    ]),
    ...group({ what: "red cells short", source: PAGE, sureness: "Q" }, [
      ["part-iii-b", "5000 mL at 25 % in 7000 mL, 25 % wanted", 500, 1e-9, () => cellsShort(need(60))],
    ]),
    ...group({ what: "blood replacing prime", source: PAGE, sureness: "Q" }, [
      [
        "part-iii-c-whole",
        "500 mL short, whole blood of 35 %",
        1429,
        0.5,
        () => bloodForPrime(need(35), mL(2000)),
      ],
      [
        "part-iii-c-packed",
        "500 mL short, packed cells of 60 %",
        833,
        0.5,
        () => bloodForPrime(need(60), mL(2000)),
      ],
    ]),
    ...group({ what: "blood added on top", source: BALANCE, sureness: "C" }, [
      ["on-top-packed", "packed cells of 60 %", 1428.57, 0.05, () => bloodOnTop(need(60))],
      ["on-top-whole", "whole blood of 35 %", 5000, 0.05, () => bloodOnTop(need(35))],
    ]),
    ...group({ what: "what comes of it", source: BALANCE, sureness: "C" }, [
      [
        "replaced",
        "833.3 mL at 60 % in the place of prime",
        25,
        1e-9,
        () => predicted(5000, 25, 2000, { cells: 500 }),
      ],
      [
        "on-top-mixed",
        "7000 mL and 1428.6 mL at 60 %",
        25,
        1e-9,
        () => mixed(7000, 1250 / 70, bloodOnTop(need(60)).value ?? 0, 60),
      ],
      [
        "833-ml-on-top",
        "7000 mL and 833.3 mL at 60 %",
        22.3,
        0.05,
        () => mixed(7000, 1250 / 70, 2500 / 3, 60),
      ],
    ]),
    ...group({ what: "fluid to dilute", source: PAGE, sureness: "Q" }, [
      ["part-iv-a", "7000 mL at 25 % to 15 %", 4667, 0.5, () => thinning],
      [
        "part-iv-a-in-all",
        "7000 mL at 25 % to 15 %: all of it",
        11_667,
        0.5,
        () => circulatingVolume(meeting(7000, 25, thinning.value ?? 0)),
      ],
      [
        "part-iv-a-thinned",
        "7000 mL at 25 % and 4667 mL of fluid",
        15,
        0.0005,
        () => mixed(7000, 25, 4667, 0),
      ],
    ]),
    ...group(
      { what: "units to concentrate", source: `${PAGE} (its answer could not be read)`, sureness: "C" },
      [
        [
          "part-iv-b",
          "4666.7 mL in excess, units of 250 mL at 60 % from 15 %",
          6.22,
          0.005,
          unitsToConcentrate,
        ],
      ],
    ),
    ...group({ what: "predicted haematocrit", source: BALANCE, sureness: "C" }, [
      ["prime", "4900 mL at 40 %, prime 1500 mL", 30.625, 0.0005, () => predicted(4900, 40, 1500)],
      [
        "crystalloid",
        "the same and 200 mL crystalloid of arrest solution",
        29.697,
        0.0005,
        () => predicted(4900, 40, 1500, { other: 200 }),
      ],
      ["65-kg", "4550 mL at 38 %, prime 1400 mL", 29.059, 0.0005, () => predicted(4550, 38, 1400)],
      ["whole-prime", "4900 mL at 38 %, prime 1400 mL", 29.556, 0.0005, () => predicted(4900, 38, 1400)],
      [
        "displaced",
        "the same with 400 mL of the prime displaced",
        31.559,
        0.0005,
        () => predicted(4900, 38, 1400, { displaced: 400 }),
      ],
    ]),
    ...group({ what: "haematocrit after ultrafiltration", source: BALANCE, sureness: "C" }, [
      ["filter-500", "7000 mL at 25 %, 500 mL", 26.923, 0.0005, () => filtered(500)],
      ["filter-1000", "7000 mL at 25 %, 1000 mL", 29.167, 0.0005, () => filtered(1000)],
      ["zero-balance", "7000 mL at 25 %, 1500 mL out and 1500 mL in", 25, 0, () => filtered(1500, 1500)],
    ]),
    ...group({ what: "ultrafiltrate for a haematocrit", source: BALANCE, sureness: "C" }, [
      [
        "back-to-500",
        "7000 mL at 25 % to 26.923 %",
        500,
        0.1,
        () => ultrafiltrateFor(26.923, mL(7000), percent(25)),
      ],
    ]),
  ],
};

const filtered = (removed: number, replaced = 0) =>
  predicted(7000, 25, 0, { displaced: removed, other: replaced });
