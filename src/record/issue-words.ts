/** What zod finds in a case, in plain words. */
import type * as z from "zod";

/** One finding as a phrase that follows a place: `it is above 90`. */
export function issueWords(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case "too_big":
      return issue.origin === "string"
        ? `it is longer than ${issue.maximum} characters`
        : `it is ${issue.inclusive === false ? `${issue.maximum} or more` : `above ${issue.maximum}`}`;
    case "too_small":
      return issue.origin === "string"
        ? `it is shorter than ${issue.minimum} characters`
        : `it is ${issue.inclusive === false ? `${issue.minimum} or less` : `below ${issue.minimum}`}`;
    case "invalid_type":
      return `a value of the kind "${issue.expected}" belongs there`;
    case "invalid_value":
      return `it is not ${issue.values.map(String).join(" or ")}`;
    case "invalid_union":
      return "no such kind is known";
    default:
      return issue.message;
  }
}
