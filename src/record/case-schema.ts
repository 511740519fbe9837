/** The schema of the case file: the header, the entries, and the seal under them. */
import * as z from "zod";
import type { Protocol } from "../protocol/protocol.ts";
import { protocolSchema } from "../protocol/protocol-schema.ts";
import { isShipped } from "../protocol/shipped.ts";
import { CASE_FORMAT, CASE_VERSION } from "./case.ts";
import { entrySchema } from "./entry.ts";

export const caseHeader = z.looseObject({
  format: z.literal(CASE_FORMAT),
  version: z.literal(CASE_VERSION),
  id: z.string().regex(/^[a-z0-9-]{4,40}$/, "small letters, digits and hyphens"),
  label: z.string().min(1).max(80),
  /** The protocol in force when the case was opened. */
  protocol: z.lazy(() => protocolSchema),
});

export const caseSchema = caseHeader.extend({
  entries: z.array(entrySchema),
  /** The hash of the last entry, as of the file's last save; the store writes it and nobody else. */
  seal: z.string().optional(),
});

const shipped = { protocol: z.custom<Protocol>() };

/** What the header of a case with this protocol is held against. */
export const caseHeaderFor = (protocol: unknown) => (isShipped(protocol) ? headerOfShipped : caseHeader);

/** What a case with this protocol is held against. */
export const caseSchemaFor = (protocol: unknown) => (isShipped(protocol) ? caseOfShipped : caseSchema);

const headerOfShipped = caseHeader.extend(shipped);
const caseOfShipped = caseSchema.extend(shipped);

/** JSON Schema of the case file, for people who read it with other tools. */
export const caseJsonSchema = () => z.toJSONSchema(caseSchema, { io: "input" });
