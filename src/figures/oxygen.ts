/** Oxygen: what the blood holds, what flow delivers, what the patient takes, and the flow that a target asks for. */
import { fixed, plain } from "../format/number.ts";
import type { Decision } from "../protocol/decision.ts";
import { derived, given } from "./derived.ts";
import type { Figure } from "./figure.ts";

/** The constants a protocol decides: mL/g (Hüfner) and mL/dL for each mmHg. */
export type OxygenConstants = { readonly perGram: Decision; readonly dissolved: Decision };

const DELIVERED = "content × flow: RCEM Learning; Postgraduate Medical Journal";
const BY_FICK = "Fick, from memory";
const REARRANGED = "delivery = content × flow, rearranged";

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

/** Oxygen delivery in mL/min = content × flow × 10; content in mL/dL, flow in L/min. */
export const oxygenDelivery = (content: Figure, flow: Figure): Figure =>
  carried("mL/min", content, flow, "L/min", DELIVERED);

/** Oxygen delivery index in mL/min/m² = content × index × 10; content in mL/dL, index in L/min/m². */
export const oxygenDeliveryIndex = (content: Figure, flowIndex: Figure): Figure =>
  carried("mL/min/m2", content, flowIndex, "L/min/m²", `${DELIVERED}; index form from memory`);

const carried = (unit: string, content: Figure, flow: Figure, flowUnit: string, source: string): Figure =>
  derived(unit, [content, flow], (held, rate) => ({
    value: held * rate * 10,
    working: `${fixed(held, 2)} mL/dL × ${fixed(rate, 2)} ${flowUnit} × 10`,
    source,
  }));

/** Oxygen uptake in mL/min = (arterial − venous content) × flow × 10; contents in mL/dL, flow in L/min. */
export const oxygenUptake = (arterial: Figure, venous: Figure, flow: Figure): Figure =>
  taken("mL/min", arterial, venous, flow, "L/min");

/** Oxygen uptake index in mL/min/m² = (arterial − venous content) × index × 10; index in L/min/m². */
export const oxygenUptakeIndex = (arterial: Figure, venous: Figure, flowIndex: Figure): Figure =>
  taken("mL/min/m2", arterial, venous, flowIndex, "L/min/m²");

const taken = (unit: string, arterial: Figure, venous: Figure, flow: Figure, flowUnit: string): Figure =>
  derived(unit, [arterial, venous, flow], (before, after, rate) => ({
    value: (before - after) * rate * 10,
    working: `(${fixed(before, 2)} − ${fixed(after, 2)}) mL/dL × ${fixed(rate, 2)} ${flowUnit} × 10`,
    source: BY_FICK,
  }));

/** Oxygen extraction in % = (arterial − venous content) / arterial content; contents in mL/dL. */
export const oxygenExtraction = (arterial: Figure, venous: Figure): Figure =>
  derived("%", [arterial, venous], (before, after) => ({
    value: ((before - after) / before) * 100,
    working: `(${fixed(before, 2)} − ${fixed(after, 2)}) / ${fixed(before, 2)} mL/dL`,
    source: BY_FICK,
  }));

/** The flow index in L/min/m² that delivers `target` mL/min/m² at an arterial content in mL/dL. */
export const indexForDelivery = (target: number, content: Figure): Figure =>
  derived("L/min/m2", [content], (held) => ({
    value: target / (held * 10),
    working: `${plain(target)} mL/min/m² / (${fixed(held, 2)} mL/dL × 10)`,
    source: REARRANGED,
  }));

/** The flow in L/min that delivers `target` mL/min/m² to a body surface in m² at an arterial content in mL/dL. */
export const flowForDelivery = (target: number, surface: Figure, content: Figure): Figure =>
  derived("L/min", [surface, content], (area, held) => ({
    value: (target * area) / (held * 10),
    working: `${plain(target)} mL/min/m² × ${plain(area)} m² / (${fixed(held, 2)} mL/dL × 10)`,
    source: REARRANGED,
  }));
