// Keeps what V8 makes of a bundled program: runs it for a moment, so that what a start needs is in it.

import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { setTimeout as pause } from "node:timers/promises";
import { fileURLToPath, pathToFileURL } from "node:url";
import v8 from "node:v8";
import { Script } from "node:vm";
import { crc32 } from "node:zlib";

const self = fileURLToPath(import.meta.url);

/** Milliseconds that a program which does not end by itself is given to draw its screen. */
const TO_DRAW = 1000;

/**
 * Compiles a program in a process of its own. Throws when it cannot.
 * @param {string} program its text
 * @param {string} into where what came of it is written
 * @param {readonly (readonly string[])[]} runs words to run it with; only with the last may it go on and on
 */
export function compile(program, into, runs) {
  const { status, stderr } = spawnSync(process.execPath, [self, program, into, JSON.stringify(runs)], {
    stdio: ["pipe", "ignore", "pipe"],
    env: { ...process.env, NODE_OPTIONS: "" },
    encoding: "utf8",
  });
  // What stands before that is the line where it went wrong, which is the whole program.
  if (status !== 0) throw new Error(`the program could not be compiled: …${stderr.slice(-1000)}`);
}

/** A terminal that shows nothing. */
function standInForTerminal() {
  Object.assign(process.stdin, { isTTY: true, setRawMode: () => process.stdin });
  Object.assign(process.stdout, { isTTY: true, columns: 80, rows: 24, write: () => true });
}

/** @type {typeof compile} */
async function compileHere(program, into, runs) {
  const text = readFileSync(program, "latin1");
  const script = new Script(text, { filename: program });
  standInForTerminal();
  // What V8 has made fits only where it has been told the same, and at its start the program has told it nothing.
  v8.setFlagsFromString = () => {};
  for (const words of runs) {
    process.argv.splice(2, Number.POSITIVE_INFINITY, ...words);
    await Promise.race([
      script.runInThisContext()(createRequire, pathToFileURL(program).href),
      pause(TO_DRAW),
    ]);
  }
  const data = script.createCachedData();
  const sum = Buffer.alloc(4);
  sum.writeUInt32LE(crc32(data));
  writeFileSync(into, Buffer.concat([Buffer.from(text.slice(0, text.indexOf("\n"))), sum, data]));
  process.exit();
}

if (process.argv[1] === self) {
  const [, , program = "", into = "", runs = "[]"] = process.argv;
  await compileHere(program, into, JSON.parse(runs));
}
