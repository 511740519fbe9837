/** The case file described for other tools, as JSON Schema. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import * as z from "zod";
import { caseJsonSchema } from "../../src/record/case-schema.ts";
import { KINDS } from "../helpers/every-kind.ts";
import { ucum } from "../helpers/ucum.ts";

type Schema = { readonly [keyword: string]: unknown };

const schema = JSON.parse(JSON.stringify(caseJsonSchema())) as Schema;
const entrySchemas = (schema as { properties: { entries: { items: { oneOf: Schema[] } } } }).properties
  .entries.items.oneOf;
const entries = JSON.stringify(entrySchemas);

const TYPES = ["string", "number", "integer", "boolean", "array", "object", "null"];

/** Every schema within a schema, with the way to it. */
function* schemasIn(one: Schema, way = "#"): Generator<[string, Schema]> {
  yield [way, one];
  for (const keyword of ["properties", "$defs"]) {
    for (const [name, inner] of Object.entries((one[keyword] ?? {}) as object))
      yield* schemasIn(inner as Schema, `${way}/${keyword}/${name}`);
  }
  for (const keyword of ["items", "additionalProperties", "propertyNames"]) {
    if (typeof one[keyword] === "object") yield* schemasIn(one[keyword] as Schema, `${way}/${keyword}`);
  }
  for (const keyword of ["oneOf", "anyOf", "allOf", "prefixItems"]) {
    for (const [i, inner] of ((one[keyword] ?? []) as Schema[]).entries())
      yield* schemasIn(inner, `${way}/${keyword}/${i}`);
  }
}

const all = [...schemasIn(schema)];

describe("the schema", () => {
  test("says which draft it is", () => {
    expect(schema.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
  });

  test("uses only types there are, requires only what it describes, and points only at what it holds", () => {
    const ways = new Set(all.map(([way]) => way));
    for (const [way, one] of all) {
      if (one.type !== undefined) expect(TYPES, way).toContain(one.type);
      if (one.$ref !== undefined) expect([...ways], way).toContain(one.$ref);
      if (one.pattern !== undefined) expect(() => new RegExp(one.pattern as string, "u"), way).not.toThrow();
      const described = Object.keys((one.properties ?? {}) as object);
      expect(described, way).toEqual(expect.arrayContaining((one.required ?? []) as string[]));
    }
  });

  test("describes every kind of entry", () => {
    const kinds = (entrySchemas as unknown as { properties: { kind: { const: string } } }[]).map(
      ({ properties }) => properties.kind.const,
    );
    expect(kinds).toEqual(KINDS);
  });

  test("lets keys through that it does not know", () => {
    expect(all.filter(([, one]) => one.additionalProperties === false).map(([way]) => way)).toEqual([]);
  });
});

describe("read back as a schema", () => {
  const reread = z.fromJSONSchema(schema as Parameters<typeof z.fromJSONSchema>[0]);
  const frozen = JSON.parse(readFileSync(new URL("frozen/case-v1.json", import.meta.url), "utf8"));

  test("it takes the frozen case", () => {
    expect(reread.safeParse(frozen).error).toBeUndefined();
  });

  test.each([
    ["another format", { ...frozen, format: "other" }],
    ["a newer version", { ...frozen, version: 2 }],
    ["an entry of no kind", { ...frozen, entries: [{ ...frozen.entries[0], kind: "song" }] }],
    ["a negative ACT", { ...frozen, entries: [{ ...frozen.entries[7], seconds: -1 }] }],
  ])("it refuses %s", (_, file) => {
    expect(reread.safeParse(file).success).toBe(false);
  });
});

describe("units", () => {
  const units = [...new Set([...entries.matchAll(/"unit":"([^"]+)"/g)].map(([, unit]) => unit as string))];

  test.each(units)("%s is a UCUM code", (unit) => {
    expect(ucum.validateUnitString(unit).status).toBe("valid");
  });

  test("stand on every number that is measured", () => {
    const numbers = all
      .filter(([way]) => way.startsWith("#/properties/entries/"))
      .filter(([, one]) => one.type === "number" && one.unit === undefined)
      .map(([way]) => way.split("/").at(-1));
    // A drug's amount and the value of a figure at closing have their unit beside them.
    expect([...new Set(numbers)].toSorted()).toEqual(["amount", "value"]);
  });
});
