// What a terminal would obey, in every text of a case from elsewhere: none of it reaches the terminal.

import { spawnSync } from "node:child_process";
import { writeFile } from "node:fs/promises";
import { expect, test } from "vitest";
import { bundlePath } from "../../.ci/bundle.js";
import { EVERY_KIND, written } from "../helpers/every-kind.ts";
import { aCase } from "../store/cases.ts";
import { testFolder } from "../store/test-folder.ts";

/** Clears the screen, sets the title, turns the direction of writing, rings, and begins a new line. */
const HOSTILE = "\u001b[2J\u001b]0;owned\u0007\u202eevil\u009b31m\r\nnext";

/** Puts it into every text that is free. */
const FREE = new Set([
  "text",
  "typed",
  "note",
  "operation",
  "who",
  "lot",
  "reason",
  "place",
  "by",
  "summary",
  "label",
]);

function poisoned(value: unknown, key = ""): unknown {
  if (typeof value === "string") return FREE.has(key) ? HOSTILE.slice(0, key === "by" ? 12 : 80) : value;
  if (Array.isArray(value)) return value.map((inner) => poisoned(inner, key));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, poisoned(inner, name)]));
}

test.each([
  ["review", "evil"],
  ["list", "evil"],
  ["figures", "bypass time"],
  ["check", "hashes"],
])("pumpside %s shows none of it", async (verb, shown) => {
  const { folder, path } = await testFolder();
  const entries = EVERY_KIND.map((draft, place) => ({ ...written(place + 1), ...draft, note: "x" }));
  const { protocol, ...head } = aCase();
  await writeFile(path, JSON.stringify({ ...(poisoned({ ...head, entries }) as object), protocol }));
  const words = verb === "list" ? ["list", "--dir", folder] : [verb, path];
  const { stdout, stderr } = spawnSync(process.execPath, [bundlePath, ...words], { encoding: "utf8" });
  expect(stdout + stderr).toContain(shown);
  expect(stdout + stderr).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}](?<!\n)/u);
});
