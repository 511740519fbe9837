/** The case file: a header and a list of entries that is only ever added to. */
import type * as z from "zod";
import type { caseSchema } from "./case-schema.ts";

export const CASE_FORMAT = "pumpside-case";
export const CASE_VERSION = 1;

export type CaseFile = z.infer<typeof caseSchema>;
