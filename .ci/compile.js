// Keeps what V8 makes of a bundled program: runs it for a moment, so that what a start needs is in it.

import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync, writeSync } from "node:fs";
import { createRequire } from "node:module";
import { setTimeout as pause } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import v8 from "node:v8";
import { Script } from "node:vm";
import { crc32 } from "node:zlib";
import { lateParts } from "./late-parts.js";
import { ENTRY } from "./program.js";

const self = fileURLToPath(import.meta.url);

/** Milliseconds that a program which does not end by itself is given to draw its screen. */
const TO_DRAW = 1000;

/**
 * Something of both texts of a program.
 * @typedef {{ first: string, rest: string }} Texts
 *
 * @typedef {object} Compiling
 * @property {Texts} texts where they lie
 * @property {Texts} [into] where what came of each is written
 * @property {readonly (readonly string[])[]} runs words to run it with; only with the last may it go on and on
 */

/**
 * Compiles a program in a process of its own, and gives the ids of the parts that were run before anything of it could
 * be seen. Throws when it cannot.
 * @param {Compiling} what
 * @returns {string[]}
 */
export function compile(what) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [self, JSON.stringify(what)], {
    // The same whoever builds it, so that the same parts are run; in colours, as on a terminal.
    env: { TERM: "xterm-256color", FORCE_COLOR: "2", SystemRoot: process.env.SystemRoot },
    encoding: "utf8",
  });
  // What stands before that is the line where it went wrong, which is the whole program.
  if (status !== 0) throw new Error(`the program could not be compiled: …${stderr.slice(-1000)}`);
  return JSON.parse(stdout);
}

/**
 * A terminal that shows nothing, and hears of the first thing that would be seen.
 * @param {() => void} seen
 */
function standInForTerminal(seen) {
  Object.assign(process.stdin, { isTTY: true, setRawMode: () => process.stdin });
  Object.assign(process.stdout, {
    isTTY: true,
    columns: 80,
    rows: 24,
    write(/** @type {string} */ text) {
      if (/\S/.test(text.replaceAll(CONTROL, ""))) seen();
      return true;
    },
  });
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: terminals begin their sequences with Esc.
const CONTROL = /\x1b\[[\x20-\x3f]*[\x40-\x7e]/g;

/** @param {Compiling} what */
async function compileHere({ texts, into, runs }) {
  const first = readText(texts.first);
  const rest = readText(texts.rest);
  const ran = new Set();
  /** @type {string[] | undefined} */
  let ranBeforeSeen;
  standInForTerminal(() => {
    ranBeforeSeen ??= [...ran];
  });
  // What V8 has made fits only where it has been told the same, and at its start the program has told it nothing.
  v8.setFlagsFromString = () => {};
  for (const words of runs) {
    process.argv.splice(2, Number.POSITIVE_INFINITY, ...words);
    const parts = hearing(first.script.runInThisContext(), (id) => ran.add(id));
    const part = lateParts(parts, () => rest.script.runInThisContext(), createRequire(self), import.meta.url);
    await Promise.race([part(ENTRY).ended, pause(TO_DRAW)]);
  }
  if (into) {
    writeCompiled(first, into.first);
    writeCompiled(rest, into.rest);
  }
  writeSync(1, JSON.stringify(ranBeforeSeen ?? []));
  process.exit();
}

/**
 * The same parts, told of when their code is run.
 * @param {import("./late-parts.js").Parts} parts
 * @param {(id: string) => void} told
 * @returns {import("./late-parts.js").Parts}
 */
const hearing = (parts, told) =>
  Object.fromEntries(
    Object.entries(parts).map(([id, run]) => [
      id,
      (...given) => {
        told(id);
        run(...given);
      },
    ]),
  );

/** @param {string} path */
function readText(path) {
  const text = readFileSync(path, "latin1");
  return { text, script: new Script(text, { filename: "pumpside.mjs" }) };
}

/**
 * @param {ReturnType<typeof readText>} source
 * @param {string} into
 */
function writeCompiled({ text, script }, into) {
  const data = script.createCachedData();
  const sum = Buffer.alloc(4);
  sum.writeUInt32LE(crc32(data));
  writeFileSync(into, Buffer.concat([Buffer.from(text.slice(0, text.indexOf("\n"))), sum, data]));
}

if (process.argv[1] === self) await compileHere(JSON.parse(process.argv[2] ?? ""));
