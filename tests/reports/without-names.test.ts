// A case handed on without names: nobody can be told from it, and it says the same of the run.

import { describe, expect, test } from "vitest";
import { INVENTED } from "../../src/commands/invented/index.ts";
import { caseSchema } from "../../src/record/case-schema.ts";
import { figuresJson } from "../../src/reports/figures.ts";
import { LEFT_OUT, withoutNames } from "../../src/reports/without-names.ts";
import { EVERY_KIND } from "../helpers/every-kind.ts";
import { at, given, openedCase } from "../helpers/typed-case.ts";
import { caseOf } from "../samples/samples.ts";

const named = EVERY_KIND.reduce((file, draft) => given(file, draft, "08:00"), openedCase());

const SECRETS = [
  "Ada Lovelace",
  "H-4711",
  "1956-02-29",
  "Dr Gray",
  "QQ",
  "bag 0815",
  "theatre 9",
  "sister of",
];

const secret = [
  {
    kind: "patient" as const,
    number: "H-4711",
    name: "Ada Lovelace",
    born: "1956-02-29",
    history: "sister of a donor",
    weight: 70,
  },
  { kind: "team" as const, people: [{ role: "surgeon", who: "Dr Gray" }] },
  { kind: "operator" as const, operator: "QQ", summary: ["Ada Lovelace, on bypass"] },
  { kind: "volume" as const, direction: "in" as const, fluid: "red-cells", ml: 250, unitNumber: "bag 0815" },
  { kind: "amend" as const, target: "e2", changes: { name: "Ada Lovelace", weight: 71 } },
  { kind: "amend" as const, target: "e3", changes: { people: [{ role: "surgeon", who: "Dr Gray" }] } },
  { kind: "void" as const, target: "e5", reason: "Dr Gray said so" },
  { kind: "note" as const, text: "Ada Lovelace is awake" },
  { kind: "incident" as const, text: "Dr Gray dropped a clamp" },
  { kind: "opened" as const, operator: "QQ", place: "theatre 9" },
].reduce((file, draft) => given(file, draft, "08:00"), openedCase());

describe("a case without names", () => {
  test("tells nothing that was written of the patient's or anybody's name", () => {
    const text = JSON.stringify(withoutNames({ ...secret, label: "Ada Lovelace" }));
    expect(SECRETS.filter((word) => text.includes(word))).toEqual([]);
  });

  test("keeps what people wrote freely when that is asked for, the typed line never", () => {
    const kept = withoutNames(secret, true);
    expect(kept.entries.map((entry) => ("text" in entry ? entry.text : ""))).toContain(
      "Ada Lovelace is awake",
    );
    expect(kept.entries.every(({ typed }) => typed === "")).toBe(true);
    const left = withoutNames(secret);
    expect(left.entries.map((entry) => ("text" in entry ? entry.text : ""))).toContain(LEFT_OUT);
  });

  test("calls each person by one code throughout", () => {
    const { entries } = withoutNames(named);
    expect(entries[1]?.by).toBe("P1");
    expect(entries.flatMap((entry) => (entry.kind === "opened" ? [entry.operator] : []))).toEqual([
      "P1",
      "P1",
    ]);
    expect(entries.flatMap((entry) => (entry.kind === "operator" ? [entry.operator] : []))).toEqual(["P2"]);
  });

  test("is still a valid case, with every kind of entry in it", () => {
    for (const file of [named, secret, ...INVENTED.map(caseOf)])
      expect(caseSchema.safeParse(withoutNames(file)).error?.issues).toBeUndefined();
  });

  test.each(INVENTED)("says the same figures of $label", (script) => {
    const file = caseOf(script);
    const told = (one: typeof file) => ({ ...figuresJson(one, at("23:00")), label: "", operator: "" });
    expect(told(withoutNames(file))).toEqual(told(file));
  });

  test("leaves out what a newer version may have added to an entry", () => {
    const [first, ...rest] = named.entries;
    const newer = { ...named, entries: [{ ...first, surname: "Lovelace" }, ...rest] } as typeof named;
    expect(JSON.stringify(withoutNames(newer))).not.toContain("Lovelace");
  });
});
