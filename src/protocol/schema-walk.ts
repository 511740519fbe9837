/** Finding one's way in a zod schema: what it expects at a place of the file. */
import * as z from "zod";
import type { Path } from "./fault.ts";

type Schema = z.core.$ZodType;

/** The schema itself, without "may be left out" and "may be null". */
export function bare(schema: Schema): Schema {
  return schema instanceof z.ZodOptional || schema instanceof z.ZodNullable ? bare(schema.unwrap()) : schema;
}

/** What a schema expects at one step: a key of an object, a member of a list, a value of a table. */
export function childOf(schema: Schema | undefined, step: PropertyKey): Schema | undefined {
  if (!schema) return undefined;
  const inner = bare(schema);
  if (inner instanceof z.ZodObject) {
    return Object.hasOwn(inner.shape, step) ? (inner.shape as Record<PropertyKey, Schema>)[step] : undefined;
  }
  if (inner instanceof z.ZodArray) return inner.element;
  if (inner instanceof z.ZodRecord) return inner.valueType;
  return undefined;
}

/** What a schema expects at a path. */
export const schemaAt = (schema: Schema, path: Path): Schema | undefined =>
  path.reduce<Schema | undefined>(childOf, schema);

/** The keys an object knows; undefined where any key may stand. */
export function knownKeys(schema: Schema): string[] | undefined {
  const inner = bare(schema);
  return inner instanceof z.ZodObject ? Object.keys(inner.shape) : undefined;
}

/** What the schema says a place decides; empty where it says nothing. */
export function wordsOf(schema: Schema | undefined): string {
  for (let here = schema; here; ) {
    const says = z.globalRegistry.get(here)?.description;
    if (says !== undefined) return says;
    here = here instanceof z.ZodOptional || here instanceof z.ZodNullable ? here.unwrap() : undefined;
  }
  return "";
}
