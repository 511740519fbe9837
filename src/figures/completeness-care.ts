/** Completeness of what was given, taken and tested, of the checks, and of who signs for it. */

import { MINUTE } from "../format/duration.ts";
import { ofKind } from "../record/standing.ts";
import { openAt } from "./checks.ts";
import { IN_PRIME } from "./coagulation.ts";
import {
  grouped,
  has,
  type Item,
  present,
  presentIf,
  type State,
  sampled,
  standard,
  wasOn,
  whereUsed,
} from "./completeness-item.ts";
import type { Course } from "./run.ts";
import { intervalsOf } from "./spans.ts";

/** Each item as present, missing or not applicable, in the order of the list. */
export const completenessOfCare = (course: Course): Item[] => [
  ...volumeItems(course),
  ...coagulationItems(course),
  ...laboratoryItems(course),
  ...personItems(course),
];

function volumeItems(course: Course): Item[] {
  const { volumes, protocol, record, balances, spans } = course;
  const bypass = wasOn(course, "bypass");
  const asked = new Set(protocol.fluidsIn.filter((fluid) => fluid.askUnitNumber).map(({ id }) => id));
  const units = volumes.filter(({ fact: { entry } }) => entry.direction === "in" && asked.has(entry.fluid));
  const begun = intervalsOf(spans, "bypass")[0]?.from ?? Number.POSITIVE_INFINITY;
  const primed = volumes.some(({ fact }) => fact.entry.direction === "in" && fact.at <= begun);
  const drugs = ofKind(record.facts, "drug").some(
    ({ entry }) => entry.name !== "heparin" && entry.name !== "protamine",
  );
  return [
    ...grouped("fluids", standard(3, 9), [
      ["prime", presentIf(bypass, primed)],
      ["urine", presentIf(bypass, balances.urine.value !== null)],
      ["ultrafiltrate", presentIf(wasOn(course, "ultrafiltration"), balances.ultrafiltrate.value !== null)],
      [
        "numbers of the units of blood",
        presentIf(
          units.length > 0,
          units.every(({ fact }) => fact.entry.unitNumber !== undefined),
        ),
      ],
      ["what was left in the pump", presentIf(bypass, has(course, "level"))],
    ]),
    ...grouped("drugs", standard(3), [["drugs with dose and time", whereUsed(drugs)]]),
  ];
}

/** Baseline before the first heparin, another before bypass, more on it, one after protamine. */
function coagulationItems(course: Course): Item[] {
  const drugs = ofKind(course.record.facts, "drug");
  const heparin = drugs.find(({ entry }) => entry.name === "heparin" && entry.route !== IN_PRIME);
  const protamine = drugs.find(({ entry }) => entry.name === "protamine");
  const bypass = intervalsOf(course.spans, "bypass");
  const [begun, ended] = [bypass[0]?.from, bypass.at(-1)?.to];
  const acts = ofKind(course.record.facts, "act").map(({ at }) => at);
  const between = (from: number, to: number) => acts.some((at) => from <= at && at < to);
  const forever = Number.POSITIVE_INFINITY;
  const recheck = course.protocol.coagulation.actRecheck.value * MINUTE;
  const long = begun !== undefined && (ended ?? forever) - begun > recheck;
  return grouped("anticoagulation", standard(8), [
    ["ACT before heparin", presentIf(heparin !== undefined, between(0, heparin?.at ?? 0))],
    ["heparin", presentIf(begun !== undefined, heparin !== undefined)],
    [
      "ACT after heparin and before bypass",
      presentIf(begun !== undefined, between(heparin?.at ?? forever, begun ?? 0)),
    ],
    [
      "ACT on bypass, where it outlasts the time to the next",
      presentIf(long, between(begun ?? 0, ended ?? forever)),
    ],
    ["protamine", presentIf(ended != null, protamine !== undefined)],
    ["ACT after protamine", presentIf(protamine !== undefined, between(protamine?.at ?? 0, forever))],
  ]);
}

function laboratoryItems(course: Course): Item[] {
  const bypass = wasOn(course, "bypass");
  const gases = ofKind(course.record.facts, "gas");
  const on = (...names: Parameters<typeof sampled>[1][]) => presentIf(bypass, sampled(course, ...names));
  return grouped("laboratory", standard(3, 10), [
    ["pH, pCO2 and pO2", on("ph", "carbonDioxide", "oxygen")],
    [
      "base excess or bicarbonate",
      presentIf(bypass, sampled(course, "baseExcess") || sampled(course, "bicarbonate")),
    ],
    [
      "haemoglobin or haematocrit",
      presentIf(bypass, sampled(course, "haemoglobin") || sampled(course, "haematocrit")),
    ],
    ["sodium and potassium", on("sodium", "potassium")],
    ["ionised calcium", on("calcium")],
    ["glucose", on("glucose")],
    ["lactate", on("lactate")],
    [
      "how gases were corrected for temperature",
      presentIf(
        gases.length > 0,
        gases.every(({ entry }) => entry.convention !== undefined),
      ),
    ],
  ]);
}

function personItems(course: Course): Item[] {
  const { record, protocol } = course;
  const ticked = (...moments: Parameters<typeof openAt>[2][]): State =>
    present(moments.every((moment) => openAt(protocol, record.facts, moment).length === 0));
  const handovers = ofKind(record.facts, "operator");
  const bypass = wasOn(course, "bypass");
  return [
    ...grouped("checks", standard(4), [
      ["checklists before bypass", ticked("bypass-on")],
      ["checklists for coming off", bypass ? ticked("bypass-off") : "not-applicable"],
      ["checklists for closing", ticked("closing")],
    ]),
    ...grouped("handover", standard(5), [
      [
        "summary at every handover of the pump",
        presentIf(
          handovers.length > 0,
          handovers.every(({ entry }) => (entry.summary ?? []).length > 0),
        ),
      ],
    ]),
    ...grouped("signature", standard(3), [
      ["everybody who ran the pump", present(record.written.every(({ entry }) => entry.by !== ""))],
    ]),
    ...grouped("incidents", standard(13), [["incidents", whereUsed(has(course, "incident"))]]),
    ...grouped("custody", KEPT_BY_THE_UNIT, [
      ["kept with the patient's permanent record", "not-applicable"],
      ["data recorded by machines", "not-applicable"],
    ]),
  ];
}

/** What a file cannot say of itself. */
const KEPT_BY_THE_UNIT = "AmSECT 2013, Standard 3, as quoted in a slide set; it is for the unit to see to";
