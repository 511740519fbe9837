/** A newer minor version may write keys that this one does not know: reading and writing must not lose them. */
import { expect, test } from "vitest";
import { adultProtocol } from "../../src/protocol/adult.ts";
import type { Draft } from "../../src/record/entry.ts";
import { readCase } from "../../src/record/reading-a-file.ts";
import { EVERY_KIND, written } from "../helpers/every-kind.ts";

const NEW = { fromLater: { deep: [1, "two", null] } };

/** The value with an unknown key in every object of it, however deep. */
function grown(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(grown);
  if (typeof value !== "object" || value === null) return value;
  return { ...Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, grown(inner)])), ...NEW };
}

/** Corrections keep their changes as they are: an unknown key there is a change to the entry. */
const grownEntry = (draft: Draft, place: number): object => {
  const entry = grown({ ...written(place + 1), ...draft }) as object;
  return draft.kind === "amend" ? { ...entry, changes: draft.changes } : entry;
};

test("unknown keys of the header, the protocol and every kind of entry survive a read and a write", () => {
  const { keys, ...rest } = adultProtocol;
  const file = {
    format: "pumpside-case",
    version: 1,
    id: "case-0001",
    label: "from a later version",
    protocol: grown(rest),
    entries: EVERY_KIND.map(grownEntry),
    ...NEW,
  };
  const read = readCase(JSON.stringify(file));
  expect(read.ok ? "" : read.fault).toBe("");
  expect(JSON.parse(JSON.stringify(read.ok && read.value))).toEqual(file);
});
