// The lint rules hold the house together: these tests show that each of them fires, and only where it should.

import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";

type Finding = { category: string; message: string; severity: string; location: { path: string } };

const house = process.cwd();
const biome = join(house, "node_modules", "@biomejs", "biome", "bin", "biome");

const below = {
  format: [],
  protocol: ["format"],
  record: ["protocol", "format"],
  figures: ["record", "protocol", "format"],
  console: ["figures", "record", "protocol", "format"],
  store: ["record", "protocol", "format"],
  reports: ["figures", "record", "protocol", "format"],
  screens: ["console", "figures", "record", "protocol", "format"],
  commands: ["screens", "reports", "store", "console", "figures", "record", "protocol", "format"],
} as const satisfies Record<string, readonly string[]>;
type Folder = keyof typeof below;
const folders = Object.keys(below) as Folder[];
const pure: readonly Folder[] = ["format", "protocol", "record", "figures", "console", "reports"];

const importing = (what: string) => `import { subject } from "${what}";\n\nexport const kept = subject;\n`;
const asking = (what: string) => `export const kept = (subject: unknown) => [${what}, subject];\n`;
const waiting = (what: string) => `export async function wait(all: Promise<number>[]) {\n  ${what}\n}\n`;

const forbidden: [why: string, path: string, text: string, rule: string][] = [];
const permitted: [why: string, path: string, text: string][] = [];

for (const folder of folders) {
  for (const other of folders.filter((name) => name !== folder)) {
    const allowed = (below[folder] as readonly string[]).includes(other);
    for (const [depth, path, up] of [
      ["", "", ".."],
      [" from a subfolder", "inner/", "../.."],
    ]) {
      const why = `${folder}/ imports ${other}/${depth}`;
      const at = `src/${folder}/${path}${other}.ts`;
      const text = importing(`${up}/${other}/subject.ts`);
      if (allowed) permitted.push([why, at, text]);
      else forbidden.push([why, at, text, "lint/style/noRestrictedImports"]);
    }
  }
  forbidden.push([
    `${folder}/ imports main.tsx`,
    `src/${folder}/root.ts`,
    importing("../main.tsx"),
    "lint/style/noRestrictedImports",
  ]);
  permitted.push([`${folder}/ imports its own`, `src/${folder}/own.ts`, importing("./inner/subject.ts")]);
}

const packages = ["react", "react/jsx-runtime", "ink", "lowdb", "commander", "env-paths"];
const globals = [
  ...["process", "performance", "setTimeout", "setInterval", "setImmediate", "queueMicrotask"],
  ...["fetch", "Buffer", "console", "crypto", "globalThis"],
];
const clockAndChance = ["Date.now()", "new Date()", "Date()", "[1].map(Date.now)", "Math.random()"];
const waits = [
  "return await all[0];",
  "for await (const one of all) { one.toFixed(); one.toFixed(); }",
  "for await (const one of all) one.toFixed();",
];

for (const folder of pure) {
  for (const name of packages)
    forbidden.push([
      `${folder}/ imports ${name}`,
      `src/${folder}/package-${packages.indexOf(name)}.ts`,
      importing(name),
      "lint/style/noRestrictedImports",
    ]);
  for (const name of ["node:fs", "node:crypto", "path"])
    forbidden.push([
      `${folder}/ imports ${name}`,
      `src/${folder}/module-${name.replace(":", "-")}.ts`,
      importing(name),
      "lint/correctness/noNodejsModules",
    ]);
  for (const name of globals)
    forbidden.push([
      `${folder}/ uses ${name}`,
      `src/${folder}/global-${name}.ts`,
      asking(name),
      "lint/style/noRestrictedGlobals",
    ]);
  clockAndChance.forEach((what, index) => {
    forbidden.push([`${folder}/ asks ${what}`, `src/${folder}/ask-${index}.ts`, asking(what), "plugin"]);
  });
  waits.forEach((what, index) => {
    forbidden.push([`${folder}/ waits: ${what}`, `src/${folder}/wait-${index}.ts`, waiting(what), "plugin"]);
  });
  permitted.push([
    `${folder}/ makes a date of a given moment`,
    `src/${folder}/moment.ts`,
    "export const kept = (at: string) => [new Date(at), Date.parse(at), Math.round(1.5)];\n",
  ]);
}
for (const [folder, name] of [
  ["screens", "lowdb"],
  ["screens", "node:fs"],
  ["screens", "commander"],
  ["store", "ink"],
  ["store", "react"],
  ["store", "commander"],
] as const)
  forbidden.push([
    `${folder}/ imports ${name}`,
    `src/${folder}/not-${name.replace(":", "-")}.ts`,
    importing(name),
    "lint/style/noRestrictedImports",
  ]);
permitted.push(
  ["store/ reaches the disk", "src/store/disk.ts", importing("node:fs/promises")],
  ["store/ reads the clock", "src/store/clock.ts", asking("Date.now(), performance.now(), new Date()")],
  ["screens/ imports ink", "src/screens/ink.ts", importing("ink")],
  ["record/ imports zod", "src/record/zod.ts", importing("zod")],
  ["main.tsx imports everybody", "src/main.tsx", importing("./store/subject.ts")],
  ["a test imports anything", "tests/record/any.test.ts", importing("../../src/main.tsx")],
);

let folder = "";
let findings: Finding[] = [];

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "pumpside-lint-"));
  const write = (path: string, text: string) => {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  };
  cpSync(join(house, ".biome.json"), join(folder, ".biome.json"));
  mkdirSync(join(folder, "tests", "lint"), { recursive: true });
  cpSync(join(house, "tests", "lint", "pure.grit"), join(folder, "tests", "lint", "pure.grit"));
  for (const [, path, text] of forbidden) write(path, text);
  for (const [, path, text] of permitted) write(path, text);
  const run = spawnSync(process.execPath, [biome, "lint", "--reporter=json", "--max-diagnostics=none", "."], {
    cwd: folder,
    encoding: "utf8",
    maxBuffer: 2 ** 26,
  });
  findings = (JSON.parse(run.stdout) as { diagnostics: Finding[] }).diagnostics;
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

const foundIn = (path: string) =>
  findings.filter((one) => one.severity === "error" && one.location.path.replaceAll("\\", "/") === path);

test("each snippet has a file of its own", () => {
  const paths = [...forbidden, ...permitted].map(([, path]) => path);
  expect(new Set(paths).size).toBe(paths.length);
});

describe.each(folders)("%s/", (name) => {
  const here = (path: string) => path.startsWith(`src/${name}/`);

  test("is refused whatever it may not import or use", () => {
    const refused = forbidden.filter(([, path]) => here(path));
    const missed = refused.filter(([, path, , rule]) => !foundIn(path).some((one) => one.category === rule));
    expect(refused.length).toBeGreaterThan(0);
    expect(missed.map(([why]) => why)).toEqual([]);
  });

  test("may import what lies below it", () => {
    const wronged = permitted.filter(([, path]) => here(path) && foundIn(path).length > 0);
    expect(wronged.map(([why]) => why)).toEqual([]);
  });
});

test("main.tsx and the tests may import anything", () => {
  expect([...foundIn("src/main.tsx"), ...foundIn("tests/record/any.test.ts")]).toEqual([]);
});
