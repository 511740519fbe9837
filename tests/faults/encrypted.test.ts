// What harms encrypted cases: files changed in every way, and a program killed while it rewrites a folder.

import { spawn } from "node:child_process";
import { once } from "node:events";
import { readdir, readFile, writeFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { beforeEach, expect, test } from "vitest";
import { bundlePath } from "../../.ci/bundle.js";
import { lowCase } from "../../src/store/case-adapter.ts";
import { safeFitting } from "../../src/store/encrypting-safe.ts";
import { keyholeAt } from "../../src/store/keyhole.ts";
import { holdCase, openCase } from "../../src/store/open-case.ts";
import { isEncrypted, plain, type Safe } from "../../src/store/safe.ts";
import { writeMany } from "../helpers/many-cases.ts";
import { aCase } from "../store/cases.ts";
import { withNotes } from "../store/notes.ts";
import { aSafe, filesIn, filesWith, PASSPHRASE } from "../store/safes.ts";
import { testFolder } from "../store/test-folder.ts";
import { damaged, diceFrom } from "./mutations.ts";

let folder: string;
beforeEach(async () => {
  ({ folder } = await testFolder());
});

const FILES = 4000;

test(`${FILES} damaged envelopes give a sentence or the state before, and are left as they were`, async () => {
  const path = join(folder, "case-20260304-abcdef.json");
  const low = lowCase(path, withNotes(aCase(), 2), { safe: aSafe });
  await low.write();
  low.data = withNotes(low.data, 1);
  await low.write();
  const whole = await readFile(path);
  const text = whole.toString("latin1");
  const came = { recovered: 0, refused: 0 };
  for (let seed = 0; seed < FILES; seed++) {
    const dice = diceFrom(seed);
    // Half of the damage goes to the first line, where the reader has most to decide.
    const line = text.indexOf("\n") + 1;
    const changed =
      dice(2) === 0 ? damaged(text.slice(0, line), dice) + text.slice(line) : damaged(text, dice);
    const bytes = Buffer.from(changed, "latin1");
    if (bytes.equals(whole)) continue;
    await writeFile(path, bytes);
    const opened = await openCase(path, [], aSafe);
    if (opened.ok) {
      expect(opened.value.file.entries).toHaveLength(3);
      expect(opened.value.recovered).toMatch(/^The file of this case is .*\.$/);
      came.recovered += 1;
    } else {
      expect(opened.fault).toMatch(/^(it|the file) [^\n]+\.$/);
      came.refused += 1;
    }
    expect((await readFile(path)).equals(bytes)).toBe(true);
  }
  expect(came.recovered).toBeGreaterThan(FILES / 4);
  expect(came.refused).toBeGreaterThan(0);
}, 300_000);

const CASES = 40;
const SECRETS = ["invented", "heparin", "operation"];

/** Runs a verb on the folder and kills it once so many cases have been rewritten; whether that was before its end. */
async function killedAfter(
  verb: "encrypt" | "decrypt",
  files: number,
  passphraseFile: string,
): Promise<boolean> {
  const words = [bundlePath, verb, "--dir", folder, "--passphrase-file", passphraseFile];
  const child = spawn(process.execPath, words, { stdio: "ignore" });
  const closed = once(child, "close");
  while (child.exitCode === null) {
    // It stands still while it is looked at, so that it can't get away from who looks.
    child.kill("SIGSTOP");
    const names = (await readdir(folder)).filter((name) => name.endsWith(".json"));
    const found = await Promise.all(names.map((name) => readFile(join(folder, name))));
    if (found.filter((bytes) => isEncrypted(bytes) === (verb === "encrypt")).length >= files) break;
    child.kill("SIGCONT");
    await pause(2);
  }
  child.kill("SIGKILL");
  const [, signal] = await closed;
  return signal === "SIGKILL";
}

/** Runs it to its end. */
async function ended(verb: string, passphraseFile: string): Promise<number | null> {
  const words = [bundlePath, verb, "--dir", folder, "--passphrase-file", passphraseFile];
  const child = spawn(process.execPath, words, { stdio: "ignore" });
  await once(child, "close");
  return child.exitCode;
}

/** The safe of the folder by its passphrase, as it is now. */
async function safeNow(): Promise<Safe> {
  const keyhole = await keyholeAt(folder);
  const safe = keyhole.is === "found" ? await safeFitting(PASSPHRASE, keyhole.envelope) : plain;
  return safe ?? expect.unreachable("the passphrase does not fit");
}

async function entriesOfAll(): Promise<number[]> {
  const safe = await safeNow();
  const names = Object.keys(await filesIn(folder)).filter((name) => name.endsWith(".json"));
  const opened = await Promise.all(names.map((name) => openCase(join(folder, name), [], safe)));
  return opened.map((one) => (one.ok && one.value.recovered === null ? one.value.file.entries.length : -1));
}

/** All files but the locks of those that were killed, which are swept later. */
const casesIn = async (from: string) =>
  Object.entries(await filesIn(from)).filter(([name]) => !name.includes(".json.lock"));

test("killed at any point of encrypting or decrypting, every case opens, and the same call again ends it", async () => {
  const elsewhere = await testFolder();
  const passphraseFile = join(elsewhere.folder, "words");
  await writeFile(passphraseFile, `${PASSPHRASE}\n`);
  await writeMany(folder, CASES);
  const [before, counts] = [await casesIn(folder), await entriesOfAll()];
  expect(counts).not.toContain(-1);
  const killed: boolean[] = [];
  for (const files of [1, 7, 20, 33]) {
    killed.push(await killedAfter("encrypt", files, passphraseFile));
    expect(await entriesOfAll()).toEqual(counts);
  }
  expect(await ended("encrypt", passphraseFile)).toBe(0);
  expect(await filesWith(folder, ...SECRETS)).toEqual([]);
  for (const files of [1, 12, 30]) {
    killed.push(await killedAfter("decrypt", files, passphraseFile));
    expect(await entriesOfAll()).toEqual(counts);
  }
  expect(await ended("decrypt", passphraseFile)).toBe(0);
  expect(await casesIn(folder)).toEqual(before);
  expect(killed).toContain(true);
}, 180_000);

test("a case left behind by a killed rewriting can be held at once", async () => {
  const elsewhere = await testFolder();
  const passphraseFile = join(elsewhere.folder, "words");
  await writeFile(passphraseFile, PASSPHRASE);
  await writeMany(folder, CASES);
  await killedAfter("encrypt", 5, passphraseFile);
  const safe = await safeNow();
  const names = Object.keys(await filesIn(folder)).filter((name) => name.endsWith(".json"));
  for (const name of names) {
    const held = await holdCase(join(folder, basename(name)), { safe });
    if (!held.ok) throw new Error(held.fault);
    await held.value.release();
  }
  expect(names).toHaveLength(CASES);
});
