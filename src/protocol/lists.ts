/** Lists of a protocol, in which no stroke and no name may mean two things. */
import * as z from "zod";
import { quoted } from "./fault.ts";

/** Members of the longest list; a longer one is refused and not looked into. */
export const LONGEST_LIST = 400;

/** A list whose members each have a `key` of their own. Checked even where members have other faults. */
export const distinct = <T extends z.ZodObject>(member: T, ...keys: string[]) =>
  z
    .array(member)
    .max(LONGEST_LIST)
    .superRefine(
      (list, context) => {
        for (const key of keys) {
          const seen = new Map<unknown, number>();
          for (const [place, item] of list.entries()) {
            const value = under(item, key);
            const before = seen.get(value);
            if (value === undefined) continue;
            if (before === undefined) seen.set(value, place);
            else context.addIssue(usedTwice(value, key, place, before));
          }
        }
      },
      { when: ({ value }) => Array.isArray(value) && value.length <= LONGEST_LIST },
    );

const under = (item: unknown, key: string): unknown =>
  typeof item === "object" && item !== null ? (item as Record<string, unknown>)[key] : undefined;

const usedTwice = (value: unknown, key: string, place: number, before: number) => ({
  code: "custom" as const,
  message: `the ${key} ${quoted(value)} is used twice, first by number ${before + 1} of the list`,
  params: { suggestion: `give one of the two another ${key}` },
  path: [place, key],
});

/** A step of a table over weight or temperature: the value holds up to and including `upTo`; null is "and above". */
type Step = { upTo: number | null; value: number };

/** A table whose steps rise, only the last of them open. */
export const rising = <T extends z.ZodType<Step>>(step: T) =>
  z
    .array(step)
    .min(1)
    .max(LONGEST_LIST)
    .superRefine((list, context) => {
      for (const [place, { upTo }] of list.entries()) {
        const next = list[place + 1]?.upTo;
        if (next === undefined || (upTo !== null && (next === null || upTo < next))) continue;
        context.addIssue({
          code: "custom",
          message: "the steps of a table rise, and only the last may be open (null)",
          params: { suggestion: "put the steps in rising order" },
          path: [place, "upTo"],
        });
      }
    });
