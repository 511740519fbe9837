/** The fields that the shipped protocols ask for, in the order in which the eye goes over pump and report. */
import { GAS_FIELDS, READING_FIELDS } from "./fields.ts";

const seldom: readonly string[] = ["rectalTemperature", "waterTemperature", "addedCarbonDioxide"];

/** All readings but those that few circuits have. */
export const defaultReadingFields: string[] = READING_FIELDS.filter((name) => !seldom.includes(name));

export const defaultGasFields: string[] = [...GAS_FIELDS];
