/** Oxygen: what the blood holds, what flow delivers, what the patient takes, and the flow that a target asks for. */
import { fixed, plain } from "../format/number.ts";
import { type Decision, FROM_MEMORY } from "../protocol/decision.ts";
import { derived, given } from "./derived.ts";
import type { Figure } from "./figure.ts";

/** The constants a protocol decides: mL/g (Hüfner) and mL/dL for each mmHg. */
type OxygenConstants = { readonly perGram: Decision; readonly dissolved: Decision };

const DELIVERED = `content × flow: RCEM Learning; Postgraduate Medical Journal; index form ${FROM_MEMORY}`;
const BY_FICK = `Fick, ${FROM_MEMORY}`;

/**
 * Oxygen content in mL/dL = perGram × Hb × saturation + dissolved × pO2; haemoglobin in g/dL, saturation in %, pO2 in
 * mmHg. `sample` names the blood where something is missing. Source: RCEM Learning; e-SAFE Anaesthesia; the constants'
 * own sources are shown.
 */
export const oxygenContent = (
  haemoglobin: number | undefined,
  saturation: number | undefined,
  oxygen: number | undefined,
  { perGram, dissolved }: OxygenConstants,
  sample = "arterial",
): Figure =>
  derived(
    "mL/dL",
    [
      given(haemoglobin, "g/dL", "haemoglobin"),
      given(saturation, "%", `${sample} saturation`),
      given(oxygen, "mm[Hg]", `${sample} pO2`),
    ],
    (hb, sat, pO2) => ({
      value: (perGram.value * hb * sat) / 100 + dissolved.value * pO2,
      working: `${plain(perGram.value)} × ${plain(hb)} g/dL × ${plain(sat)} % + ${plain(dissolved.value)} × ${plain(pO2)} mmHg`,
      source: [perGram.source, dissolved.source].filter(Boolean).join("; ") || undefined,
    }),
  );

/** Oxygen delivery index in mL/min/m² = content × index × 10; content in mL/dL, index in L/min/m². */
export const oxygenDeliveryIndex = (content: Figure, flowIndex: Figure): Figure =>
  derived("mL/min/m2", [content, flowIndex], (held, index) => ({
    value: held * index * 10,
    working: `${fixed(held, 2)} mL/dL × ${fixed(index, 2)} L/min/m² × 10`,
    source: DELIVERED,
  }));

/** Oxygen uptake index in mL/min/m² = (arterial − venous content) × index × 10; index in L/min/m². */
export const oxygenUptakeIndex = (arterial: Figure, venous: Figure, flowIndex: Figure): Figure =>
  derived("mL/min/m2", [arterial, venous, flowIndex], (before, after, index) => ({
    value: (before - after) * index * 10,
    working: `(${fixed(before, 2)} − ${fixed(after, 2)}) mL/dL × ${fixed(index, 2)} L/min/m² × 10`,
    source: BY_FICK,
  }));

/** Oxygen extraction in % = (arterial − venous content) / arterial content; contents in mL/dL. */
export const oxygenExtraction = (arterial: Figure, venous: Figure): Figure =>
  derived("%", [arterial, venous], (before, after) => ({
    value: ((before - after) / before) * 100,
    working: `(${fixed(before, 2)} − ${fixed(after, 2)}) / ${fixed(before, 2)} mL/dL`,
    source: BY_FICK,
  }));

/** The flow in L/min that delivers `target` mL/min/m² to a body surface in m² at an arterial content in mL/dL. */
export const flowForDelivery = (target: number, surface: Figure, content: Figure): Figure =>
  derived("L/min", [surface, content], (area, held) => ({
    value: (target * area) / (held * 10),
    working: `${plain(target)} mL/min/m² × ${plain(area)} m² / (${fixed(held, 2)} mL/dL × 10)`,
    source: "delivery = content × flow, rearranged",
  }));
