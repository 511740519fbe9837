// The bundle: one file that needs nothing beside it, the same bytes from the same sources wherever they lie.

import { spawnSync } from "node:child_process";
import { copyFileSync, cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import stringWidth from "string-width";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bundle } from "../../.ci/bundle.js";
import { isOrdinary } from "../../.ci/widths.js";

const fromInk = createRequire(createRequire(import.meta.url).resolve("ink"));
const { default: inkWidth } = fromInk("string-width") as { default: (text: string) => number };

let folder = "";
const bundled = (place: string) => join(folder, place, "out", "pumpside.js");

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "pumpside-bundle-"));
  for (const place of ["one", "another place"]) {
    const cwd = join(folder, place);
    for (const name of ["src", "package.json"]) cpSync(name, join(cwd, name), { recursive: true });
    symlinkSync(join(process.cwd(), "node_modules"), join(cwd, "node_modules"));
    await bundle({ cwd, file: bundled(place) });
  }
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("the bundle", () => {
  test("has the same bytes from the same sources in another folder", () => {
    const [one, another] = ["one", "another place"].map((place) => readFileSync(bundled(place)));
    expect(one?.equals(another as Buffer)).toBe(true);
  });

  test("runs alone in a folder, with an empty environment", () => {
    const alone = mkdtempSync(join(folder, "alone-"));
    copyFileSync(bundled("one"), join(alone, "pumpside.js"));
    const { stdout, stderr, status } = spawnSync(process.execPath, ["pumpside.js", "keys"], {
      cwd: alone,
      env: {},
      encoding: "utf8",
    });
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    expect(stdout).toContain("bypass on / off");
    expect(readdirSync(alone)).toEqual(["pumpside.js"]);
  });

  test("names no folder of the machine it was made on, and is plain ASCII", () => {
    const text = readFileSync(bundled("one"), "latin1");
    expect(text).not.toContain(process.cwd());
    expect(text).not.toContain(folder);
    expect(text).not.toMatch(/[^\0-\x7f]/);
  });

  test("checks no pattern of Unicode properties before it is used", () => {
    const { stderr } = spawnSync(process.execPath, [bundled("one"), "--version"], { encoding: "utf8" });
    expect(stderr).toBe("");
    expect(readFileSync(bundled("one"), "latin1")).not.toMatch(
      /[=(,:]\/[^/\n*]{0,80}\\p\{[^\n]{0,80}\/[a-z]/,
    );
  });
});

test("every sign that the bundle counts by itself is one column for string-width too", () => {
  const counted = Array.from({ length: 0x10000 }, (_, unit) => String.fromCharCode(unit)).filter(isOrdinary);
  expect(counted.length).toBeGreaterThan(1500);
  const wrong = counted.filter((sign) =>
    [stringWidth, inkWidth].some((width) => width(sign) !== 1 || width(`a${sign}${sign}b`) !== 4),
  );
  expect(wrong).toEqual([]);
});
