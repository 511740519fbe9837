/** The case file: a header and a list of entries that is only ever added to. */
import * as z from "zod";
import { protocolSchema } from "../protocol/protocol.ts";
import { entrySchema } from "./entry.ts";

export const CASE_FORMAT = "pumpside-case";
export const CASE_VERSION = 1;

export const caseHeader = z.looseObject({
  format: z.literal(CASE_FORMAT),
  version: z.literal(CASE_VERSION),
  id: z.string().regex(/^[a-z0-9-]{4,40}$/, "small letters, digits and hyphens"),
  label: z.string().min(1).max(80),
  /** The protocol in force when the case was opened. */
  protocol: protocolSchema,
});

export const caseSchema = caseHeader.extend({
  entries: z.array(entrySchema),
  /** The hash of the last entry, as of the file's last save; the store writes it and nobody else. */
  seal: z.string().optional(),
});

export type CaseFile = z.infer<typeof caseSchema>;

/** JSON Schema of the case file, for people who read it with other tools. */
export const caseJsonSchema = () => z.toJSONSchema(caseSchema, { io: "input" });
