/** Haematocrit and haemoglobin, each from the other where only one is known. */
import { plain } from "../format/number.ts";
import { FROM_MEMORY } from "../protocol/decision.ts";
import { derived, given } from "./derived.ts";
import { type Figure, known } from "./figure.ts";
import type { Patient } from "./patient.ts";

/** Points of haematocrit that go with a g/dL of haemoglobin where nobody has measured both. */
const HAEMATOCRIT_PER_GRAM = 3;
const RULE = `haematocrit is 3 × haemoglobin: ${FROM_MEMORY}`;

/** The patient's haematocrit in %: measured, else 3 × the haemoglobin in g/dL. */
export const patientHaematocrit = ({ haematocrit, haemoglobin }: Patient): Figure =>
  haematocrit === undefined && haemoglobin !== undefined
    ? known(
        HAEMATOCRIT_PER_GRAM * haemoglobin,
        "%",
        `${HAEMATOCRIT_PER_GRAM} × ${plain(haemoglobin)} g/dL`,
        RULE,
      )
    : given(haematocrit, "%", "haematocrit");

/** The haemoglobin in g/dL at another haematocrit: in the patient's own proportion where both were measured. */
export const haemoglobinAt = (haematocrit: Figure, patient: Patient): Figure =>
  derived("g/dL", [haematocrit], (hct) => {
    const { haemoglobin, haematocrit: before } = patient;
    return haemoglobin && before
      ? {
          value: (hct * haemoglobin) / before,
          working: `${plain(hct)} % × ${plain(haemoglobin)} g/dL / ${plain(before)} %`,
          source: "the patient's own proportion",
        }
      : {
          value: hct / HAEMATOCRIT_PER_GRAM,
          working: `${plain(hct)} % / ${HAEMATOCRIT_PER_GRAM}`,
          source: RULE,
        };
  });
