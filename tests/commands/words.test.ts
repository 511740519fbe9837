// Verbs that print what the program knows of itself: strokes, protocols, the demo, and a case read back as text.

import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { INVENTED } from "../../src/commands/invented/index.ts";
import { momentOf, played } from "../../src/commands/invented/play.ts";
import type { Script } from "../../src/commands/invented/script.ts";
import { STROKES } from "../../src/console/strokes/table.ts";
import { figuresText } from "../../src/reports/figures.ts";
import { sampleFolder } from "../samples/samples.ts";
import { CASE_FAULT, caseFolder, expectDone, expectRefused, WRONG_CALL } from "./pumpside.ts";

let cases: Awaited<ReturnType<typeof caseFolder>>;
beforeAll(async () => {
  cases = await caseFolder();
});
afterAll(() => cases.remove());

const readme = fileURLToPath(new URL("../../README.md", import.meta.url));

describe("keys", () => {
  test("as data are the strokes of the table, in its order", async () => {
    const printed = JSON.parse(expectDone(await cases.pumpside("keys", "--json")));
    expect(printed).toEqual(STROKES.map(({ key, id, name, takes }) => ({ key, id, name, takes })));
  });

  test("as a table are those of the README", async () => {
    const between = /<!-- strokes -->\n([\s\S]*?)<!-- \/strokes -->/.exec(
      await readFile(readme, "utf8"),
    )?.[1];
    expect(between).toBeDefined();
    expect(expectDone(await cases.pumpside("keys", "--markdown"))).toBe(between);
  });

  test("as text are a row each", async () => {
    const rows = expectDone(await cases.pumpside("keys"))
      .trimEnd()
      .split("\n");
    expect(rows.map((row) => row.split(" ")[0])).toEqual(STROKES.map(({ key }) => key));
  });
});

describe("protocol", () => {
  test.each(["adult", "paediatric"])("shows the shipped %s file, which can be used", async (name) => {
    expect(JSON.parse(expectDone(await cases.pumpside("protocol", "show", name)))).toMatchObject({ name });
  });

  test("shows no file that is not shipped", async () => {
    const refused = await cases.pumpside("protocol", "show", "ours");
    expectRefused(refused, WRONG_CALL, /no shipped protocol "ours": take adult or paediatric/);
  });

  test("checks no file that is not there", async () => {
    const refused = await cases.pumpside("protocol", "check", "none.json");
    expectRefused(refused, WRONG_CALL, /the file "none.json" cannot be read: check its name/);
  });

  test("finds fault with a case, which is no protocol", async () => {
    const sample = join(sampleFolder, `${(INVENTED[0] as Script).id}.json`);
    const { code, out, err } = await cases.pumpside("protocol", "check", sample);
    expect({ code, err }).toEqual({
      code: CASE_FAULT,
      err: "pumpside: 1 fault: the protocol cannot be used yet.\n",
    });
    expect(out).toMatch(/is not a protocol/);
  });

  test("says what every setting means", async () => {
    const out = expectDone(await cases.pumpside("protocol", "settings"));
    expect(out).toMatch(/^coagulation · heparinPerKg$/m);
  });
});

describe("the demo without a terminal", () => {
  test("prints the whole run and its final figures", async () => {
    const script = INVENTED[0] as Script;
    const file = played(script);
    if (!file.ok) throw new Error(file.fault);
    const last = script.steps.at(-1);
    if (!last) throw new Error("no steps");
    const out = expectDone(await cases.pumpside("demo"));
    const numbers = [...out.matchAll(/^\d\d:\d\d:\d\d +#(\d+) /gm)].map(([, number]) => Number(number));
    expect(numbers).toEqual(file.value.entries.map(({ seq }) => seq));
    expect(out).toContain(figuresText(file.value, momentOf(script, last)));
    expect(out).toMatch(/not a medical device/);
  });
});

describe("review without a terminal", () => {
  test("prints every case of a folder, entry by entry, with its figures", async () => {
    const out = expectDone(await cases.pumpside("review", sampleFolder));
    const parts = out.split(/^== /m).slice(1);
    expect(parts.map((part) => part.split("\n")[0]).toSorted()).toEqual(
      INVENTED.map(({ label }) => label).toSorted(),
    );
    for (const part of parts) {
      expect(part).toMatch(/^\d\d:\d\d:\d\d +#1 case +opened/m);
      expect(part).toMatch(/^bypass time +\d+:\d\d/m);
    }
  });
});

describe("the invented cases", () => {
  test.each(INVENTED.map(({ label, id }) => [label, id]))("%s is whole", async (_label, id) => {
    const out = expectDone(await cases.pumpside("check", join(sampleFolder, `${id}.json`)));
    expect(out).toMatch(/^The case is valid and whole: \d+ entries, closed, seal /);
  });
});
