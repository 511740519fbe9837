/** What zod finds, in the words of somebody who edits the file. */
import type * as z from "zod";
import { type Fault, faultAt, quoted } from "./fault.ts";
import { instead } from "./nearest.ts";
import { schemaAt, wordsOf } from "./schema-walk.ts";
import { expectedWords } from "./schema-words.ts";

type Issue = z.core.$ZodIssue;

/** One fault for each thing that zod finds in the file. */
export function faultsOfSchema(schema: z.ZodType, json: unknown): Fault[] {
  const parsed = schema.safeParse(json, { reportInput: true });
  return parsed.success ? [] : parsed.error.issues.map((issue) => faultOfIssue(schema, issue));
}

function faultOfIssue(schema: z.ZodType, issue: Issue): Fault {
  const here = schemaAt(schema, issue.path);
  const expected = expectedWords(here);
  const missing = ["it is missing", wordsOf(here)].filter(Boolean).join(": ");
  const fault = (says: string, suggestion = `write ${expected}`) => faultAt(issue.path, says, suggestion);
  const input = issue.input;
  switch (issue.code) {
    case "invalid_type":
      if (input === undefined) return fault(missing);
      if (typeof input === "string" && issue.expected === "number")
        return fault(...textForNumber(input, expected));
      return fault(`${kindOf(input)} stands here`);
    case "invalid_value":
      return input === undefined
        ? fault(missing)
        : fault(`${quoted(input)} is not known here`, oneOf(input, issue.values) ?? `write ${expected}`);
    case "too_small":
    case "too_big":
      return fault(...outside(issue, input, expected));
    case "invalid_format":
      return fault(...wrongForm(input, issue.message));
    case "custom":
      return fault(issue.message, String(issue.params?.suggestion ?? `write ${expected}`));
    default:
      return fault(issue.message);
  }
}

function textForNumber(input: string, expected: string): [string, string] {
  const number = Number(input.replace(",", "."));
  const meant = input.trim() !== "" && Number.isFinite(number);
  return meant
    ? [`the number ${quoted(input)} stands between quotation marks`, `write ${number} without them`]
    : [`the text ${quoted(input)} stands where a number belongs`, `write ${expected}`];
}

const oneOf = (input: unknown, values: readonly unknown[]): string | undefined =>
  typeof input === "string" && values.every((value) => typeof value === "string")
    ? instead(input, values)
    : undefined;

function outside(
  issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig,
  input: unknown,
  expected: string,
): [string, string] {
  const low = issue.code === "too_small";
  const limit = Number(low ? issue.minimum : issue.maximum);
  if (issue.origin === "number")
    return [`${quoted(input)} is too ${low ? "low" : "high"}`, `write ${expected}`];
  if (issue.origin === "array") {
    return low
      ? ["the list is too short", `give it at least ${limit}`]
      : [`the list is longer than ${limit}`, "keep what the unit uses"];
  }
  if (input === "")
    return [
      "the text is empty",
      `write ${limit === 1 ? "something" : `${limit} characters`}, or take the line out`,
    ];
  return [
    `the text ${quoted(input)} is too ${low ? "short" : "long"}`,
    `write ${low ? "at least" : "at most"} ${limit} character${limit === 1 ? "" : "s"}`,
  ];
}

function wrongForm(input: unknown, form: string): [string, string] {
  const short = String(input)
    .toLowerCase()
    .slice(0, 40)
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "");
  const example = form.includes("short name") && short !== "" ? `, such as "${short}"` : "";
  return [`${quoted(input)} does not have the right form`, `write ${form}${example}`];
}

const kindOf = (input: unknown) => (typeof input === "string" ? `the text ${quoted(input)}` : quoted(input));
