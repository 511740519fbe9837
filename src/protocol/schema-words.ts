/** What the schema expects, in the words of somebody who edits the file. */
import * as z from "zod";
import { plain } from "../format/number.ts";
import { unitText } from "../format/unit.ts";
import { bare } from "./schema-walk.ts";

/** `a number between 50 and 1000 IU/kg`, `one of dubois, mosteller, haycock`, `a list in square brackets`. */
export function expectedWords(schema: z.core.$ZodType | undefined): string {
  const inner = schema && bare(schema);
  if (inner instanceof z.ZodNumber) return numberWords(inner);
  if (inner instanceof z.ZodEnum) return `one of ${inner.options.join(", ")}`;
  if (inner instanceof z.ZodLiteral) return JSON.stringify(inner.value);
  if (inner instanceof z.ZodString) return "text between quotation marks";
  if (inner instanceof z.ZodBoolean) return "true or false, without quotation marks";
  if (inner instanceof z.ZodArray) return "a list in square brackets";
  if (inner instanceof z.ZodObject) return groupWords(inner);
  if (inner instanceof z.ZodRecord) return "names and values in curly brackets";
  return "another value";
}

function groupWords({ shape }: z.ZodObject): string {
  if (shape.value instanceof z.ZodNumber) return `{"value": n} with ${numberWords(shape.value)} for n`;
  const needed = Object.keys(shape).filter((key) => !(shape[key] instanceof z.ZodOptional));
  return needed.length === 0 ? "a group in curly brackets" : `{…} with ${needed.join(", ")}`;
}

function numberWords(schema: z.ZodNumber): string {
  const unit = schema.meta()?.unit;
  const of = typeof unit === "string" && unit !== "1" ? ` ${unitText(unit)}` : "";
  const [low, high] = [schema.minValue, schema.maxValue];
  if (low === null || !Number.isFinite(low)) return `a number${of && ` in${of}`}`;
  if (high !== null && Number.isFinite(high)) return `a number between ${plain(low)} and ${plain(high)}${of}`;
  const above = schema._zod.bag.exclusiveMinimum !== undefined;
  return above ? `a number above ${plain(low)}${of}` : `a number of ${plain(low)}${of} or more`;
}
