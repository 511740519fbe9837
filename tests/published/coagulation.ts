/** Heparin, protamine and ACT. */
import { isActMet } from "../../src/figures/coagulation.ts";
import { heparinMilligrams } from "../../src/figures/conversions.ts";
import { heparinDose, heparinShown, protaminePlanned } from "../../src/figures/planned-doses.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import type { Protocol } from "../../src/protocol/protocol.ts";
import { runAt, typed } from "../helpers/typed-case.ts";
import { group, type Section } from "./check.ts";

const REVIEW = "300 to 400 IU/kg: review of bypass anticoagulation, quoted at th4.ilovetranslation.com";
const LOADING =
  "1 mg for 100 IU of the loading dose: J Extra Corpor Technol 2025;57:188–193; Barlow, Bedside notebook";
const RATIOS = "ratios of 1.0 and 0.8: J Extra Corpor Technol 2023;55:105–111";
const TARGET =
  "target of 480 s: Shore-Lesserson L et al. Anesth Analg 2018;126:413–424, as summarised at Medscape 898528_5; we let it be met at the target";

const withCoagulation = (changes: Partial<Protocol["coagulation"]>): Protocol => ({
  ...adultProtocol,
  coagulation: { ...adultProtocol.coagulation, ...changes },
});

const dose = (heparinPerKg: number) =>
  heparinDose({ weight: 70 }, { heparinPerKg }, adultProtocol.coagulation);

const protamine = (ratio: number, ...heparin: readonly number[]) =>
  runAt(
    typed(
      heparin.map((units, i) => `08:${40 + i} h ${units}`),
      withCoagulation({ protamineRatio: { value: ratio } }),
    ),
    "12:00",
  ).coagulation;

const typedMilligrams = (mg: number) => runAt(typed([`08:40 h ${mg}mg`]), "09:00").coagulation.heparinTotal;

const planned = (ratio: number) =>
  protaminePlanned(dose(300), { ...adultProtocol.coagulation, protamineRatio: { value: ratio } });

export const coagulation: Section = {
  name: "coagulation",
  checks: [
    ...group({ what: "heparin before bypass", source: REVIEW, sureness: "C" }, [
      ["heparin-300", "70 kg at 300 IU/kg", 21_000, 0, () => dose(300)],
      ["heparin-400", "70 kg at 400 IU/kg", 28_000, 0, () => dose(400)],
    ]),
    ...group({ what: "heparin in mg", source: "common practice, no source: 100 IU/mg", sureness: "M" }, [
      ["heparin-210-mg", "21 000 IU", 210, 0, () => heparinMilligrams(21_000, 100)],
      [
        "heparin-280-mg",
        "28 000 IU, shown in mg",
        280,
        0,
        () => heparinShown(dose(400), { ...adultProtocol, shown: { ...adultProtocol.shown, heparin: "mg" } }),
      ],
      ["heparin-typed-in-mg", "280 mg typed: IU", 28_000, 0, () => typedMilligrams(280)],
      ["heparin-4-mg-kg", "4 mg/kg for 70 kg: IU", 28_000, 0, () => typedMilligrams(4 * 70)],
    ]),
    ...group({ what: "protamine on the first heparin", source: LOADING, sureness: "Q" }, [
      ["protamine-first", "21 000, 5 000 and 5 000 IU, 1:1", 210, 0, () => onFirst(1)],
    ]),
    ...group(
      { what: "protamine on all heparin", source: `${LOADING}; reckoned on the total`, sureness: "C" },
      [
        [
          "protamine-total",
          "21 000, 5 000 and 5 000 IU, 1:1",
          310,
          0,
          () => protamine(1, 21_000, 5000, 5000).protamineOnTotal,
        ],
      ],
    ),
    ...group({ what: "protamine at a lower ratio", source: RATIOS, sureness: "C" }, [
      ["protamine-0.8", "21 000 IU, 0.8 mg for 100 IU", 168, 1e-9, () => planned(0.8)],
      ["protamine-0.6", "21 000 IU, 0.6 mg for 100 IU", 126, 1e-9, () => planned(0.6)],
    ]),
    ...group({ what: "most protamine", source: "from memory: 2.6 mg for 100 IU", sureness: "M" }, [
      ["protamine-most", "21 000 IU", 546, 1e-9, () => protamine(1, 21_000).protamineMost],
      ["protamine-capped", "21 000 IU, a ratio of 3 mg for 100 IU", 546, 1e-9, () => planned(3)],
    ]),
    ...group({ what: "whether an ACT meets its target", source: TARGET, sureness: "C" }, [
      ["act-479", "479 s against 480 s", false, 0, () => isActMet(479, 480)],
      ["act-480", "480 s against 480 s", true, 0, () => isActMet(480, 480)],
      ["act-481", "481 s against 480 s", true, 0, () => isActMet(481, 480)],
    ]),
  ],
};

function onFirst(ratio: number) {
  return protamine(ratio, 21_000, 5000, 5000).protamineOnFirst;
}
