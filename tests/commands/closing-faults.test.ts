// A closed case says what it said when it was closed, or check tells what does not fit.

import { expect, test } from "vitest";
import { closingFaults } from "../../src/commands/closing-faults.ts";
import type { CaseFile } from "../../src/record/case.ts";
import type { Entry } from "../../src/record/entry.ts";
import { typed } from "../helpers/typed-case.ts";

const closed = () =>
  typed([
    "09:00 b",
    "09:05 v500c",
    "09:30 b",
    "09:40 . KM",
    "09:45 . KM urine forgotten",
    "09:46 u300",
    "09:50 . KM",
  ]);

const changed = (file: CaseFile, kind: Entry["kind"], facts: object): CaseFile => ({
  ...file,
  entries: file.entries.map((entry) => (entry.kind === kind ? ({ ...entry, ...facts } as Entry) : entry)),
});

test("a case that was closed, reopened and closed again fits both closings", () => {
  const file = closed();
  expect(file.entries.filter(({ kind }) => kind === "closed")).toHaveLength(2);
  expect(file.entries.find(({ kind }) => kind === "closed")).toMatchObject({
    figures: expect.arrayContaining([
      { name: "bypassTime", value: 1800, unit: "s" },
      { name: "fluidIn", value: 500, unit: "mL" },
    ]),
  });
  expect(closingFaults(file)).toEqual([]);
});

test("a volume that was changed by hand does not fit them", () => {
  expect(closingFaults(changed(closed(), "volume", { ml: 700 }))).toEqual(
    expect.arrayContaining([
      expect.stringMatching(
        /^the closing \(entry 5\) says fluidIn 500, and the entries before it give 700\.$/,
      ),
    ]),
  );
});
