/** Blood volume and the loss that can be borne. */
import { allowableBloodLoss } from "../../src/figures/blood-loss.ts";
import {
  bloodVolumeByBand,
  bloodVolumeByNadler,
  bloodVolumeIsPlausible,
  bloodVolumePerKg,
  nadlerLitres,
} from "../../src/figures/blood-volume.ts";
import { known } from "../../src/figures/figure.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import { paediatricProtocol } from "../../src/protocol/paediatric.ts";
import { type Check, group, type Section } from "./check.ts";

const NADLER = "Nadler SB, Hidalgo JU, Bloch T. Surgery 1962;51:224–232, as printed in general articles";
const IOWA = "Iowa Head and Neck Protocols, maximum allowable blood loss";

const MEN_AND_WOMEN: readonly (readonly [kg: number, metres: number, man: number, woman: number])[] = [
  [80, 1.8, 5.3191, 4.9065],
  [70, 1.75, 4.8238, 4.4074],
  [70, 1.7, 4.66, 4.2484],
  [60, 1.6, 4.0383, 3.6267],
  [100, 1.85, 6.1462, 5.746],
];

const sexes = (man: number, woman: number) =>
  [
    ["male", man],
    ["female", woman],
  ] as const;

const nadler: Check[] = MEN_AND_WOMEN.flatMap(([kg, metres, man, woman]) =>
  sexes(man, woman).map(([sex, litres]) => ({
    id: `nadler-${sex}-${kg}-${metres}`,
    what: "blood volume, Nadler",
    inputs: `${sex}, ${kg} kg, ${metres} m`,
    expected: litres * 1000,
    tolerance: 0.05,
    source: NADLER,
    sureness: "C",
    got: () => bloodVolumeByNadler({ sex, weight: kg, height: metres * 100 }),
  })),
);

const byBand = (kg: number, perKg: number) =>
  bloodVolumeByBand({ weight: kg }, [{ upTo: null, value: perKg }]);
const loss = (ml: number, before: number, floor: number) =>
  allowableBloodLoss(known(ml, "mL", "given"), known(before, "%", "given"), floor);
const nadlerPerKg = (sex: "male" | "female", weight: number, height: number) =>
  bloodVolumePerKg(bloodVolumeByNadler({ sex, weight, height }), { weight });
const inTeachingBands = (weight: number) =>
  bloodVolumeByBand({ weight }, paediatricProtocol.body.bloodVolumeBands);

export const blood: Section = {
  name: "blood",
  checks: [
    ...nadler,
    ...group({ what: "blood volume by weight, Nadler", source: NADLER, sureness: "C" }, [
      ["80-kg-man", "male, 80 kg, 1.80 m", 66.5, 0.05, () => nadlerPerKg("male", 80, 180)],
      ["80-kg-woman", "female, 80 kg, 1.80 m", 61.3, 0.05, () => nadlerPerKg("female", 80, 180)],
      ["100-kg-man", "male, 100 kg, 1.85 m", 61.5, 0.05, () => nadlerPerKg("male", 100, 185)],
      ["100-kg-woman", "female, 100 kg, 1.85 m", 57.5, 0.05, () => nadlerPerKg("female", 100, 185)],
    ]),
    ...group({ what: "Nadler with centimetres for metres", source: NADLER, sureness: "C" }, [
      ["centimetres", "male, 80 kg, 180: L", 2.1e6, 0.05e6, () => nadlerLitres(80, 180, "male")],
      [
        "centimetres-refused",
        "male, 80 kg, 18000 cm",
        null,
        0,
        () => bloodVolumeByNadler({ sex: "male", weight: 80, height: 18_000 }),
      ],
    ]),
    ...group(
      {
        what: "blood volume, adult at 65 mL/kg",
        source: "Haemodilution Calculations, teaching notes at perfusion.com.au",
        sureness: "Q",
      },
      [
        [
          "adult",
          "70 kg by the adult protocol's band",
          4550,
          0,
          () => bloodVolumeByBand({ weight: 70 }, adultProtocol.body.bloodVolumeBands),
        ],
      ],
    ),
    ...group(
      {
        what: "blood volume by weight bands",
        source: "perfusion-course flash cards, paediatric overview (bands); the products are computed",
        sureness: "C",
      },
      [
        ["band-5", "5 kg", 425, 0, () => inTeachingBands(5)],
        ["band-15", "15 kg", 1200, 0, () => inTeachingBands(15)],
        ["band-25", "25 kg", 1875, 0, () => inTeachingBands(25)],
        ["band-35", "35 kg", 2450, 0, () => inTeachingBands(35)],
        ["band-60", "60 kg", 3900, 0, () => inTeachingBands(60)],
      ],
    ),
    ...group({ what: "blood volume of an infant", source: IOWA, sureness: "Q" }, [
      ["infant-volume", "5 kg at 80 mL/kg", 400, 0, () => byBand(5, 80)],
    ]),
    ...group({ what: "allowable blood loss", source: IOWA, sureness: "Q" }, [
      ["infant-loss", "400 mL, 36 % down to 25 %", 122, 0.5, () => loss(400, 36, 25)],
    ]),
    ...group({ what: "preterm infant", source: "ASA Monitor, ACE Question, 2020;84(9):21", sureness: "Q" }, [
      ["preterm-volume", "kg-at-100-ml-kg", 180, 1e-9, () => byBand(1.8, 100)],
      ["preterm-loss", "180 mL, 40 % down to 33 %", 31.5, 0.05, () => loss(180, 40, 33)],
    ]),
    ...group({ what: "plausible blood volume", source: "PMC4680658: 30 to 130 mL/kg", sureness: "Q" }, [
      ["29.9-ml-kg", "2990 mL in 100 kg", false, 0, () => bloodVolumeIsPlausible(2990, 100)],
      ["30-ml-kg", "3000 mL in 100 kg", true, 0, () => bloodVolumeIsPlausible(3000, 100)],
      ["130-ml-kg", "13000 mL in 100 kg", true, 0, () => bloodVolumeIsPlausible(13_000, 100)],
      ["130.1-ml-kg", "13010 mL in 100 kg", false, 0, () => bloodVolumeIsPlausible(13_010, 100)],
    ]),
  ],
};
