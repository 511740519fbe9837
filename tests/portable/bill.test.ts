// What is handed on: every package under a licence that allows it, in the bill of materials, with a reason to be there.

import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { bomText, handedOn, isAllowed, licencesText } from "../../.ci/bill.js";
import { runtimes } from "../../.ci/runtime.js";

type Component = {
  type: string;
  name: string;
  version: string;
  purl: string;
  "bom-ref": string;
  licenses: unknown[];
};
type Bom = {
  bomFormat: string;
  specVersion: string;
  version: number;
  metadata: { component: Component };
  components: Component[];
  dependencies: { ref: string; dependsOn: string[] }[];
};

let text = "";
let bom: Bom;
let packages: Awaited<ReturnType<typeof handedOn>>;

beforeAll(async () => {
  packages = await handedOn();
  text = await bomText(runtimes["linux-x64"]);
  bom = JSON.parse(text);
});

describe("licences", () => {
  test("of all packages may be handed on", () => {
    expect(packages.length).toBeGreaterThan(20);
    expect(packages.filter(({ licence }) => !isAllowed(licence)).map(({ name }) => name)).toEqual([]);
  });

  test("that leave no such choice are refused", () => {
    expect(["GPL-3.0-only", "(GPL-3.0-only AND MIT)", "UNLICENSED", ""].filter(isAllowed)).toEqual([]);
    expect(["(MIT OR GPL-3.0-only)", "(MIT AND ISC)"].every(isAllowed)).toBe(true);
  });

  test("stand in one text, each with its package", async () => {
    const all = await licencesText();
    for (const { name, version } of packages) expect(all).toContain(`${name} ${version} (`);
    expect(all.match(/\S+ \S+ \(.*\)\n-+\nIt comes without/g) ?? []).toHaveLength(1);
  });
});

describe("the bill of materials", () => {
  test("has the shape of CycloneDX 1.5", () => {
    expect(bom).toMatchObject({ bomFormat: "CycloneDX", specVersion: "1.5", version: 1 });
    expect(bom.metadata.component).toMatchObject({ type: "application", name: "pumpside" });
    for (const one of bom.components) {
      expect(["library", "platform"]).toContain(one.type);
      expect(one.purl).toMatch(/^pkg:npm\/(%40[^/]+\/)?[^@/]+@\d/);
      expect(one.licenses.length).toBeGreaterThan(0);
    }
    const refs = bom.components.map((one) => one["bom-ref"]);
    expect(new Set(refs).size).toBe(refs.length);
    const known = new Set([...refs, bom.metadata.component["bom-ref"]]);
    expect(
      bom.dependencies.flatMap(({ ref, dependsOn }) => [ref, ...dependsOn]).filter((ref) => !known.has(ref)),
    ).toEqual([]);
  });

  test("names every package that is handed on, and the runtime", () => {
    const named = new Set(bom.components.map(({ name, version }) => `${name} ${version}`));
    const wanted = [...packages, runtimes["linux-x64"]].map(({ name, version }) => `${name} ${version}`);
    expect(wanted.filter((one) => !named.has(one))).toEqual([]);
  });

  test("is the same text each time", async () => {
    expect(await bomText(runtimes["linux-x64"])).toBe(text);
  });
});

test("every package that is asked for has its reason in DEVELOPERS.md", () => {
  const { dependencies, optionalDependencies, devDependencies } = JSON.parse(
    readFileSync("package.json", "utf8"),
  );
  const page = readFileSync("DEVELOPERS.md", "utf8");
  const asked = Object.keys({ ...dependencies, ...optionalDependencies, ...devDependencies });
  const without = asked.filter((name) => !page.includes(name.startsWith("@types/") ? "@types" : name));
  expect(without).toEqual([]);
});
