/** The dozen that are easily got wrong, by a printed slip, by an inverted word, or at an edge. */
import { bodySurface } from "../../src/figures/body-surface.ts";
import { completenessOf } from "../../src/figures/completeness.ts";
import { type Figure, figureText, known } from "../../src/figures/figure.ts";
import { oxygenContent, oxygenDeliveryIndex } from "../../src/figures/oxygen.ts";
import { crystalloidOf, solutionDose } from "../../src/figures/planned-doses.ts";
import { bloodForPrime, bloodOnTop } from "../../src/figures/red-cells.ts";
import { setupFigures } from "../../src/figures/setup-figures.ts";
import { warmingRate } from "../../src/figures/temperatures.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import { checkProtocolText } from "../../src/protocol/check.ts";
import { solutionOf } from "../../src/protocol/protocol.ts";
import { openedCase, runAt } from "../helpers/typed-case.ts";
import { ucum } from "../helpers/ucum.ts";
import { advises } from "./advised.ts";
import { type Check, group, type Section } from "./check.ts";
import { mixed } from "./haemodilution.ts";

const CHAPTER =
  "Mosteller RD. N Engl J Med 1987;317:1098; a teaching chapter (Mishra N et al.) prints 1.72, cut off and not rounded";
const PAGE = "Haemodilution Calculations, teaching notes at perfusion.com.au";
const HUFNER = "1.34, 1.36 and 1.39 mL/g are all in print: RCEM Learning; Weill Cornell PICU page; PMJ";
const OUTLET =
  "Engelman R et al. J Extra Corpor Technol 2015;47:145–154: below 37 °C (a registry counts 37.0 as kept)";
const PARTS = "total × crystalloid / (blood + crystalloid)";
const RATIO = "Matte GS, del Nido PJ. J Extra Corpor Technol 2012;44:98–103";
const LIBRARY = "@lhncbc/ucum-lhc 7.1.10";

const need = (product: number) => ({
  volume: known(7000, "mL", "given"),
  haematocrit: known(1250 / 70, "%", "given"),
  wanted: 25,
  product,
});
const prime = known(2000, "mL", "given");

const delivery = (hb: number, perGram: number): Figure =>
  oxygenDeliveryIndex(
    oxygenContent(hb, 99, 200, { perGram: { value: perGram }, dissolved: { value: 0.003 } }),
    known(2.4, "L/min/m2", "given"),
  );
const isBelow = (hb: number, perGram: number, limit: number) =>
  (delivery(hb, perGram).value ?? Number.NaN) < limit;

const crystalloid = (id: string) => {
  const solution = solutionOf(adultProtocol, id);
  return solution ? crystalloidOf(known(1000, "mL", "given"), solution) : null;
};
const oneToFour = solutionOf(adultProtocol, "one-to-four");
const capped = () => solutionDose(oneToFour?.first, { weight: 70 });
const ofThatDose = () => (oneToFour ? crystalloidOf(capped(), oneToFour) : null);

const THRESHOLDS: readonly (readonly [limit: number, source: string])[] = [
  [262, "de Somer F et al. Crit Care 2011;15 (issue 4)"],
  [270, "Newland RF et al., ANZ Collaborative Perfusion Registry"],
  [272, "Ranucci M et al. Ann Thorac Surg 2005;80:2213–2220"],
  [280, "Ranucci M et al. (GIFT) J Thorac Cardiovasc Surg 2018;156(5)"],
  [300, "Mukaida H et al. J Thorac Cardiovasc Surg 2019"],
];

/** Whether a protocol may set the threshold with its source, and the figures then go by it. */
function isASetting(value: number, source: string): boolean {
  const protocol = {
    ...adultProtocol,
    watch: { ...adultProtocol.watch, oxygenDelivery: { value, source } },
  };
  const names = setupFigures({}, {}, protocol).map(({ name }) => name);
  return checkProtocolText(JSON.stringify(protocol)).ok && names.includes(`flow for a delivery of ${value}`);
}

const thresholds: Check[] = THRESHOLDS.flatMap(([limit, source]) =>
  group({ what: "a delivery threshold is a setting with its source", source, sureness: "Q" }, [
    [`6-threshold-${limit}`, `${limit} mL/min/m²`, true, 0, () => isASetting(limit, source)],
  ]),
);

export const traps: Section = {
  name: "traps",
  checks: [
    ...group({ what: "body surface, Mosteller", source: CHAPTER, sureness: "C" }, [
      ["1-unrounded", "65 kg, 165 cm", 1.726, 0.000_05, () => bodySurface("mosteller", 65, 165)],
      [
        "1-shown",
        "the same, as it is shown",
        "1.73 m²",
        0,
        () => figureText(bodySurface("mosteller", 65, 165), 2),
      ],
      ["1-dubois", "the same, DuBois", "1.72 m²", 0, () => figureText(bodySurface("dubois", 65, 165), 2)],
    ]),
    ...group({ what: "packed cells of 60 % for 25 %", source: PAGE, sureness: "Q" }, [
      [
        "2-replacing",
        "5000 mL at 25 %, 2000 mL prime: replacing it",
        833,
        0.5,
        () => bloodForPrime(need(60), prime),
      ],
    ]),
    ...group({ what: "packed cells of 60 % for 25 %", source: `mass balance on ${PAGE}`, sureness: "C" }, [
      ["2-on-top", "the same, on top", 1429, 0.5, () => bloodOnTop(need(60))],
      [
        "2-mistaken",
        "833 mL on top: what it comes to",
        22.3,
        0.05,
        () => mixed(7000, 1250 / 70, 2500 / 3, 60),
      ],
    ]),
    ...group({ what: "whole blood of 35 % for 25 %", source: PAGE, sureness: "Q" }, [
      ["3-replacing", "the same case: replacing prime", 1429, 0.5, () => bloodForPrime(need(35), prime)],
    ]),
    ...group({ what: "whole blood of 35 % for 25 %", source: `mass balance on ${PAGE}`, sureness: "C" }, [
      ["3-on-top", "the same, on top", 5000, 1e-6, () => bloodOnTop(need(35))],
    ]),
    ...group({ what: "delivery below 280 by the constant", source: HUFNER, sureness: "C" }, [
      ["4-at-1.34", "Hb 8.2 g/dL, 99 %, 200 mmHg, 2.4 L/min/m²", true, 0, () => isBelow(8.2, 1.34, 280)],
      ["4-at-1.36", "the same at 1.36 mL/g", true, 0, () => isBelow(8.2, 1.36, 280)],
      ["4-at-1.39", "the same at 1.39 mL/g", false, 0, () => isBelow(8.2, 1.39, 280)],
    ]),
    ...group({ what: "delivery below 272 by the constant", source: HUFNER, sureness: "C" }, [
      ["5-at-1.34", "Hb 8.0 g/dL, the rest the same", true, 0, () => isBelow(8, 1.34, 272)],
      ["5-at-1.36", "the same at 1.36 mL/g", false, 0, () => isBelow(8, 1.36, 272)],
      ["5-at-1.39", "the same at 1.39 mL/g", false, 0, () => isBelow(8, 1.39, 272)],
    ]),
    ...thresholds,
    ...group({ what: "an arterial outlet is advised upon", source: OUTLET, sureness: "Q" }, [
      ["7-at-37.0", "37.0 °C", true, 0, () => advises({ arterialTemperature: 37 }, /^outlet-limit$/)],
      ["7-at-36.9", "36.9 °C", false, 0, () => advises({ arterialTemperature: 36.9 }, /^outlet-limit$/)],
    ]),
    ...group({ what: "crystalloid of a litre", source: PARTS, sureness: "C" }, [
      ["8-four-to-one", "four of blood to one", 200, 1e-9, () => crystalloid("blood-4-1")],
    ]),
    ...group({ what: "crystalloid of a litre", source: RATIO, sureness: "Q" }, [
      ["8-one-to-four", "one of blood to four", 800, 1e-9, () => crystalloid("one-to-four")],
    ]),
    ...group(
      {
        what: "first dose of the 1:4 solution",
        source: "from memory: 20 mL/kg, at the most 1000 mL",
        sureness: "M",
      },
      [["9-capped", "70 kg", 1000, 0, () => capped()]],
    ),
    ...group(
      {
        what: "crystalloid of that dose",
        source: `ratio: ${RATIO}; the dose itself from memory`,
        sureness: "C",
      },
      [["9-crystalloid", "70 kg", 800, 1e-9, () => ofThatDose()]],
    ),
    ...group({ what: "units the library takes", source: LIBRARY, sureness: "Q" }, [
      [
        "10-kelvin",
        "K/min, which is ours for warming",
        "valid",
        0,
        () => ucum.validateUnitString(ofWarming()).status,
      ],
      ["10-celsius", "Cel/min", "invalid", 0, () => ucum.validateUnitString("Cel/min").status],
      [
        "11-ours",
        "1000 mL/min/m2 as L/min/m2",
        1,
        1e-9,
        () => ucum.convertUnitTo(delivery(8, 1.34).unit, 1000, "L/min/m2").toVal,
      ],
      ["11-unit-of-delivery", "ours", "mL/min/m2", 0, () => delivery(8, 1.34).unit],
      [
        "11-wrong",
        "1000 mL/min.m2 as L/min/m2",
        null,
        0,
        () => ucum.convertUnitTo("mL/min.m2", 1000, "L/min/m2").toVal,
      ],
    ]),
    ...group(
      {
        what: "every item of completeness says edition and number",
        source: "Standard 3 in 2013 (PMC4557534), numbered differently later",
        sureness: "Q",
      },
      [["12-edition", "a case just opened", true, 0, () => everyItemSaysItsEdition()]],
    ),
  ],
};

function ofWarming(): string {
  return warmingRate(runAt(openedCase(), "08:00")).unit;
}

function everyItemSaysItsEdition(): boolean {
  const items = completenessOf(runAt(openedCase(), "08:00"));
  return items.length > 0 && items.every(({ standard }) => /^AmSECT \d{4}, Standard \d+/.test(standard));
}
