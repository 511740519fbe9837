/** What is half typed, as it is kept beside the case while nobody is there, and read back. */
import * as z from "zod";
import type { HalfTyped, Model } from "./model.ts";

const instant = z.object({ ms: z.number(), offset: z.number() });
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

const holdsText = (half: HalfTyped): boolean =>
  half.name === "form"
    ? Object.values(half.texts).some((text) => text.trim() !== "")
    : half.text.trim() !== "";

/** Reads it back; whatever is not what we wrote gives nothing. */
export function readHalfTyped(json: unknown): readonly HalfTyped[] {
  const read = z.array(halfTyped).max(20).safeParse(json);
  return read.success ? read.data : [];
}
