// `pumpside report` as it is called: to standard output or into files, and what it will not do.

import { createHash } from "node:crypto";
import {
  copyFileSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { runCommandLine } from "../../src/commands/command-line.ts";
import { sampleFolder } from "../samples/samples.ts";

let folder: string;
let said: { out: string; err: string };
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "pumpside-report-"));
  copyFileSync(join(sampleFolder, "adult-valve.json"), join(folder, "valve.json"));
  said = { out: "", err: "" };
  const into = (key: "out" | "err") => (text: string | Uint8Array) => {
    said[key] += String(text);
    return true;
  };
  vi.spyOn(process.stdout, "write").mockImplementation(into("out"));
  vi.spyOn(process.stderr, "write").mockImplementation(into("err"));
});
afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true });
});

const at = (name: string) => join(folder, name);
const report = (...words: string[]) => runCommandLine(["report", at("valve.json"), ...words], "0");

describe("to standard output", () => {
  test("each format comes whole, and nothing else is said", async () => {
    const begins = { text: "PERFUSION RECORD", html: "<!doctype html>", fhir: "{", json: "{" };
    for (const [format, begin] of Object.entries(begins)) {
      said.out = "";
      expect(await report("--as", format)).toBe(0);
      expect(said.out.startsWith(begin)).toBe(true);
      expect(said.out.endsWith("\n")).toBe(true);
    }
    expect(said.err).toBe("");
  });

  test("one table of csv is chosen by its name", async () => {
    expect(await report("--as", "csv", "--table", "readings")).toBe(0);
    expect(said.out.startsWith("case,number,happened")).toBe(true);
  });

  test("the checksum is that of the file, and the file is called whole", async () => {
    await report("--as", "text");
    const bytes = readFileSync(at("valve.json"));
    expect(said.out).toContain(createHash("sha256").update(bytes).digest("hex"));
    expect(said.out).toContain("valid and whole");
  });

  test("a file that was changed by hand is told to be", async () => {
    const text = readFileSync(at("valve.json"), "utf8");
    writeFileSync(at("valve.json"), text.replace('"amount":33000', '"amount":23000'));
    expect(await report("--as", "text")).toBe(0);
    expect(said.out).toMatch(/^FILE NOT WHOLE +entry 44 was changed by hand/m);
  });

  test("of a damaged file what could be recovered is told, as such, and the call ends with a fault", async () => {
    const text = readFileSync(at("valve.json"), "utf8");
    writeFileSync(at("valve.json"), text.slice(0, -2000));
    expect(await report("--as", "text")).toBe(1);
    expect(said.out).toMatch(/^FILE NOT WHOLE /m);
    expect(said.out).toContain("none: the file is damaged");
    expect(said.err).not.toBe("");
  });

  test("the case is told as it stood at a moment", async () => {
    await report("--as", "json", "--at", "2026-03-04T09:20:00+01:00");
    expect(JSON.parse(said.out)).toMatchObject({
      phase: "arrested",
      figures: { arrestTime: { value: 335 } },
    });
  });

  test("without names, neither the patient's number nor anybody's initials are told in any format", async () => {
    for (const format of ["text", "html", "fhir", "json"]) await report("--as", format, "--without-names");
    for (const table of ["entries", "readings", "figures"])
      await report("--as", "csv", "--table", table, "--without-names");
    expect(said.out).not.toMatch(/V-0147|\bKM\b|\bRO\b|447108|theatre 2|wrong chamber|Adult valve/);
  });

  test("notes are kept where that is asked for", async () => {
    await report("--as", "text", "--without-names", "--keep-notes");
    expect(said.out).toContain("wrong chamber");
    expect(said.out).not.toContain("V-0147");
  });
});

describe("into files", () => {
  test("a file is written for its owner only, and its path is said", async () => {
    expect(await report("--as", "html", "--out", at("deep/valve.html"))).toBe(0);
    expect(said.out).toBe(`${at("deep/valve.html")}\n`);
    expect(readFileSync(at("deep/valve.html"), "utf8")).toContain("Perfusion record");
    if (process.platform !== "win32") expect(statSync(at("deep/valve.html")).mode & 0o077).toBe(0);
  });

  test("csv writes its three tables into a folder", async () => {
    expect(await report("--as", "csv", "--out", at("tables"))).toBe(0);
    const names = ["adult-valve-entries.csv", "adult-valve-figures.csv", "adult-valve-readings.csv"];
    expect(readdirSync(at("tables")).toSorted()).toEqual(names);
    expect(said.out.trim().split("\n")).toHaveLength(3);
  });

  test("a file that is there already stays, until it is said to make way", async () => {
    writeFileSync(at("valve.txt"), "mine");
    expect(await report("--as", "text", "--out", at("valve.txt"))).toBe(1);
    expect(said.err).toContain("is there already: name another file, or add --force");
    expect(readFileSync(at("valve.txt"), "utf8")).toBe("mine");
    expect(await report("--as", "text", "--out", at("valve.txt"), "--force")).toBe(0);
    expect(readFileSync(at("valve.txt"), "utf8")).toContain("PERFUSION RECORD");
  });

  test("a case is never written over, neither this one nor another", async () => {
    copyFileSync(join(sampleFolder, "infant-repair.json"), at("infant.json"));
    for (const name of ["valve.json", "infant.json"]) {
      const before = readFileSync(at(name), "utf8");
      expect(await report("--as", "text", "--out", at(name), "--force")).toBe(1);
      expect(readFileSync(at(name), "utf8")).toBe(before);
    }
    expect(said.err).toMatch(/is the case itself.*is a case/s);
  });

  test("a place that cannot be written to is told in one sentence", async () => {
    expect(await report("--as", "text", "--out", join(at("valve.json"), "in.txt"))).toBe(1);
    expect(said.err).toMatch(/^pumpside: ".*": .* can't be written: .*\.\n$/);
  });
});

describe("a wrong call", () => {
  test.each([
    [["--as", "pdf"], "Allowed choices are text, html, csv, fhir, json"],
    [[], "required option '--as <format>'"],
    [["--as", "csv"], "choose one with --table (entries, readings or figures), or a folder"],
    [["--as", "html", "--table", "figures"], "--table chooses a table of --as csv"],
    [["--as", "text", "--keep-notes"], "--keep-notes goes with --without-names"],
    [["--as", "text", "--at", "noon"], '"noon" is no time'],
  ])("%j is answered with what to do", async (words, says) => {
    expect(await report(...words)).toBe(2);
    expect(said.err).toContain(says);
    expect(said.out).toBe("");
  });

  test("a case that is not there is told by the name that was asked for", async () => {
    expect(await runCommandLine(["report", "nobody", "--as", "text", "--dir", folder], "0")).toBe(2);
    expect(said.err).toContain('"nobody"');
  });
});
