// Archives: every file with its bytes, and the same bytes for the same files.

import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { crc32, inflateRawSync } from "node:zlib";
import { afterAll, beforeAll, expect, test } from "vitest";
import { writeTar, writeZip } from "../../.ci/archive.js";

let place = "";
const FILES = { "run.sh": "#!/bin/sh\n", "inner/empty.txt": "", "inner/long.txt": "0123456789".repeat(200) };

beforeAll(() => {
  place = mkdtempSync(join(tmpdir(), "pumpside-archive-"));
  mkdirSync(join(place, "thing", "inner"), { recursive: true });
  for (const [name, text] of Object.entries(FILES))
    writeFileSync(join(place, "thing", name), text, { mode: name === "run.sh" ? 0o755 : 0o644 });
});

afterAll(() => rmSync(place, { recursive: true, force: true }));

test("a tar is unpacked by tar, with what runs still running", async () => {
  const file = join(place, "thing.tar.gz");
  await writeTar(join(place, "thing"), file);
  const into = join(place, "unpacked");
  mkdirSync(into);
  execFileSync("tar", ["-xzf", file, "-C", into]);
  for (const [name, text] of Object.entries(FILES))
    expect(readFileSync(join(into, "thing", name), "utf8")).toBe(text);
  expect(statSync(join(into, "thing", "run.sh")).mode & 0o777).toBe(0o755);
  const first = readFileSync(file);
  await writeTar(join(place, "thing"), file);
  expect(readFileSync(file).equals(first)).toBe(true);
});

test("a zip lists every file where it lies, with its check and its bytes", async () => {
  const file = join(place, "thing.zip");
  await writeZip(join(place, "thing"), file);
  const bytes = readFileSync(file);
  const end = bytes.length - 22;
  expect(bytes.readUInt32LE(end)).toBe(0x06054b50);
  let at = bytes.readUInt32LE(end + 16);
  const found: Record<string, string> = {};
  for (let left = bytes.readUInt16LE(end + 10); left > 0; left--) {
    expect(bytes.readUInt32LE(at)).toBe(0x02014b50);
    const [check, packed, size] = [16, 20, 24].map((field) => bytes.readUInt32LE(at + field)) as number[];
    const nameLength = bytes.readUInt16LE(at + 28);
    const start = bytes.readUInt32LE(at + 42);
    const content = start + 30 + nameLength;
    const text = inflateRawSync(bytes.subarray(content, content + (packed ?? 0)));
    expect([crc32(text), text.length]).toEqual([check, size]);
    found[bytes.toString("utf8", at + 46, at + 46 + nameLength)] = text.toString();
    at += 46 + nameLength;
  }
  expect(found).toEqual(
    Object.fromEntries(Object.entries(FILES).map(([name, text]) => [`thing/${name}`, text])),
  );
});
