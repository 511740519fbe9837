/** What is half typed, as it is kept beside the case while nobody is there, and read back. */
import * as z from "zod";
import type { CaseFile } from "../record/case.ts";
import type { HalfTyped, Model } from "./model.ts";
import { strokeFor } from "./strokes/table.ts";

/** Up to the year 9999, which is as far as ISO 8601 goes without a sign. */
const instant = z.object({
  ms: z.int().min(0).max(253_402_214_400_000),
  offset: z.int().min(-1440).max(1440),
});
const shared = { started: instant, cursor: z.int().min(0), fault: z.string().nullable() };

const halfTyped = z.discriminatedUnion("name", [
  z.object({ name: z.literal("line"), stroke: z.string(), text: z.string(), ...shared }),
  z.object({ name: z.literal("put-right"), target: z.string(), text: z.string(), ...shared }),
  z.object({
    name: z.literal("form"),
    stroke: z.string(),
    field: z.string(),
    texts: z.record(z.string(), z.string()),
    page: z.int().min(0),
    ...shared,
  }),
]);

/** Everything half typed, the line that is open last; lines with nothing in them are not worth keeping. */
export function halfTypedOf({ mode, aside }: Model): readonly HalfTyped[] {
  const open = mode.name === "line" || mode.name === "put-right" || mode.name === "form" ? [mode] : [];
  return [...aside, ...open].filter(holdsText);
}

/** Whether anything has been typed. */
export const holdsText = (half: HalfTyped): boolean =>
  half.name === "form"
    ? Object.values(half.texts).some((text) => text.trim() !== "")
    : half.text.trim() !== "";

/** Whether the case knows what a half-typed line belongs to: it may have been kept by another version, or by hand. */
export function canBeBroughtBack(half: HalfTyped, { protocol, entries }: CaseFile): boolean {
  return half.name === "put-right"
    ? entries.some(({ id }) => id === half.target)
    : strokeFor(half.stroke, protocol)?.opens === half.name;
}

/** Reads it back; whatever is not what we wrote gives nothing. */
export function readHalfTyped(json: unknown): readonly HalfTyped[] {
  const read = z.array(halfTyped).max(20).safeParse(json);
  return read.success ? read.data : [];
}
