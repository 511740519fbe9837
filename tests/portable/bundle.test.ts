// The bundle: needs nothing but itself, the same bytes from the same sources wherever they lie, compiled ahead or not.

import { spawnSync } from "node:child_process";
import {
  copyFileSync,
  cpSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Script } from "node:vm";
import fc from "fast-check";
import stringWidth from "string-width";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bundle } from "../../.ci/bundle.js";
import { lasting } from "../../.ci/lasting.js";
import { graphemes } from "../../.ci/segments.js";
import { isOrdinary } from "../../.ci/widths.js";

const fromInk = createRequire(createRequire(import.meta.url).resolve("ink"));
const { default: inkWidth } = fromInk("string-width") as { default: (text: string) => number };

let folder = "";
const bundled = (place: string, name = "pumpside.mjs") => join(folder, place, "out", name);

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "pumpside-bundle-"));
  for (const place of ["one", "another place"]) {
    const cwd = join(folder, place);
    for (const name of ["src", "package.json"]) cpSync(name, join(cwd, name), { recursive: true });
    symlinkSync(join(process.cwd(), "node_modules"), join(cwd, "node_modules"));
    await bundle({ cwd, file: bundled(place) });
  }
}, 60_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("the bundle", () => {
  test("has the same bytes from the same sources in another folder", () => {
    const [one, another] = ["one", "another place"].map((place) => readFileSync(bundled(place)));
    expect(one?.equals(another as Buffer)).toBe(true);
  });

  /** Runs these files of the bundle alone in a folder, with an empty environment. */
  function runAlone(names: readonly string[], change: (alone: string) => void = () => {}) {
    const alone = mkdtempSync(join(folder, "alone-"));
    for (const name of names) copyFileSync(bundled("one", name), join(alone, name));
    change(alone);
    const { stdout, stderr, status } = spawnSync(process.execPath, ["pumpside.mjs", "keys"], {
      cwd: alone,
      env: {},
      encoding: "utf8",
    });
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    expect(readdirSync(alone).sort()).toEqual([...names].sort());
    return stdout;
  }

  /** Where the program begins in either of its two texts. */
  const HELD = /function the(?:First|Rest)\(\) \{\/\*\n/;
  const compiled = ["screen", "verb"].flatMap((way) => [
    `pumpside.${way}-first.compiled`,
    `pumpside.${way}-rest.compiled`,
  ]);
  const all = ["pumpside.mjs", ...compiled];

  test("runs alone in a folder, and writes nothing there", () => {
    expect(runAlone(all)).toContain("bypass on / off");
  });

  test("is one file, which needs nothing beside it", () => {
    expect(runAlone(["pumpside.mjs"])).toContain("bypass on / off");
  });

  test.each(compiled)("is taken by V8 as it was compiled in %s", (name) => {
    const [, first = "", rest = ""] = readFileSync(bundled("one"), "latin1").split(HELD);
    const comment = name.includes("first") ? first : rest;
    const text = comment.slice(0, comment.indexOf("*/")).replaceAll("*\x01/", "*/");
    const made = readFileSync(bundled("one", name));
    // Its first line names the program, and its sum follows.
    const cachedData = made.subarray(text.indexOf("\n") + 4);
    expect(new Script(text, { cachedData }).cachedDataRejected).toBe(false);
  });

  test("runs where what was compiled is damaged, or of another Node", () => {
    const damaged = runAlone(all, (alone) =>
      writeFileSync(
        join(alone, "pumpside.verb-first.compiled"),
        Buffer.from(
          readFileSync(bundled("one", "pumpside.verb-first.compiled")).map((byte, at) =>
            at < 90 ? byte : 0,
          ),
        ),
      ),
    );
    expect(damaged).toContain("bypass on / off");
  });

  test("goes by the program where what was compiled is of another one, though it be as long", () => {
    const changed = runAlone(all, (alone) => {
      const path = join(alone, "pumpside.mjs");
      const text = readFileSync(path, "latin1");
      const [name = ""] = /(?<=theRest\(\) \{\/\*\n).*/.exec(text) ?? [];
      const other = text.replace("bypass on / off", "BYPASS on / off").replace(name, name.replace(/.$/, "x"));
      writeFileSync(path, other, "latin1");
    });
    expect(changed).toContain("BYPASS on / off");
  });

  test("builds schemas where something is checked, and only there", () => {
    const told = `data:text/javascript,process.on("exit",()=>console.error("zod is here:","__zod_globalConfig" in globalThis))`;
    const builds = (...words: string[]) =>
      spawnSync(process.execPath, ["--import", told, bundled("one"), ...words], {
        encoding: "utf8",
      }).stderr.trim();
    expect(builds("keys")).toBe("zod is here: false");
    expect(builds("figures", "sample-cases/adult-valve.json")).toBe("zod is here: true");
  });

  test("names no folder of the machine it was made on, and is plain ASCII", () => {
    const text = readFileSync(bundled("one"), "latin1");
    expect(text).not.toContain(process.cwd());
    expect(text).not.toContain(folder);
    expect(text).not.toMatch(/[^\0-\x7f]/);
  });

  test("checks no pattern of Unicode properties before it is used", () => {
    const { stderr } = spawnSync(process.execPath, [bundled("one"), "--version"], {
      encoding: "utf8",
    });
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

test("the bundle parts any text into the signs that Node's own segmenter finds", () => {
  const node = new Intl.Segmenter();
  const ordinary = fc.string({ unit: fc.constantFrom("a", " ", "·", "─", "é", "⣿", "°", "\x1b", "\x1b[1m") });
  const text = fc.oneof(ordinary, fc.string({ unit: "grapheme" }), fc.string({ unit: "binary" }));
  fc.assert(
    fc.property(text, fc.nat(20), (one, at) => {
      const [ours, theirs] = [graphemes.segment(one), node.segment(one)];
      expect([...ours].map(({ segment, index }) => [segment, index])).toEqual(
        [...theirs].map(({ segment, index }) => [segment, index]),
      );
      expect(ours.containing(at)?.index).toBe(theirs.containing(at)?.index);
    }),
    { numRuns: 1000 },
  );
  const signs = Array.from({ length: 0x10000 }, (_, unit) => String.fromCharCode(unit)).filter(isOrdinary);
  const all = signs.flatMap((sign) => [sign, sign, "\x1b", sign]).join("");
  expect(Array.from(node.segment(all), ({ segment }) => segment)).toEqual([...all]);
});

test("what the bundle keeps of a text is what is made of it, made once while it lasts", () => {
  const asked: string[] = [];
  const length = lasting((text) => {
    asked.push(text);
    return text.length;
  });
  const texts = ["", "a", "bb"];
  expect([...texts, ...texts].map(length)).toEqual([0, 1, 2, 0, 1, 2]);
  expect(asked).toEqual(texts);
  for (let more = 0; more < 2000; more++) expect(length("c".repeat(more))).toBe(more);
  expect(length("bb")).toBe(2);
  expect(asked.filter((text) => text === "bb")).toHaveLength(2);
});
