/** Every setting of a protocol as a list: what the documentation of the file is written from. */
import * as z from "zod";
import { protocolSchema } from "./protocol-schema.ts";
import { bare, wordsOf } from "./schema-walk.ts";
import { expectedWords } from "./schema-words.ts";

type Schema = z.core.$ZodType;

type Setting = {
  /** `solutions · interval`; a setting of a list's members is the same for each of them. */
  readonly place: string;
  /** What it decides; empty where the name says it all. */
  readonly says: string;
  /** `{"value": n} with a number between 1 and 300 min for n`. */
  readonly expects: string;
  /** Whether it has to be there. */
  readonly needed: boolean;
};

/** The settings in the order of the file, groups before their members. Sources are left out: any number may have one. */
export const settings = (): Setting[] => membersOf(protocolSchema, "");

function membersOf(schema: Schema, place: string): Setting[] {
  const inner = bare(schema);
  if (inner instanceof z.ZodArray) return membersOf(inner.element, place);
  if (!(inner instanceof z.ZodObject)) return [];
  return Object.entries(inner.shape as Record<string, Schema>).flatMap(([name, member]) => {
    if (name === "source") return [];
    const here = place === "" ? name : `${place} · ${name}`;
    const needed = !(member instanceof z.ZodOptional);
    const setting = { place: here, says: wordsOf(member), expects: expectedWords(member), needed };
    return [setting, ...(isDecision(member) ? [] : membersOf(member, here))];
  });
}

/** A single decided number, whose `value` needs no line of its own. */
function isDecision(schema: Schema): boolean {
  const inner = bare(schema);
  return inner instanceof z.ZodObject && Object.keys(inner.shape).join() === "value,source";
}
