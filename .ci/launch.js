// Runs the program that stands in the comments below, from what V8 made of it when it was built where that lies beside
// this file and fits this Node. What the first screen needs stands first; the rest is read once something asks for it.

import { createRequire } from "node:module";
import { lateParts } from "./late-parts.js";

// Imported, these would first load streams and promises of the file system.
const require = createRequire(import.meta.url);
const { readFileSync } = require("node:fs");
const { fileURLToPath } = require("node:url");
const { Script } = require("node:vm");
const { crc32 } = require("node:zlib");

// A verb without a screen needs half of the program at most, and reads what was made of that half.
const [, , verb = ""] = process.argv;
const way = /^(run|review|demo|-.*|)$/.test(verb) ? "screen" : "verb";

const filename = fileURLToPath(import.meta.url);
/** @type {import("./late-parts.js").Parts | undefined} */
let rest;
const part = lateParts(
  partsIn(theFirst, "first"),
  () => (rest ??= partsIn(theRest, "rest")),
  require,
  import.meta.url,
);
await part("./the program").ended;

/**
 * The parts that the comment of a function holds.
 * @param {() => void} holder
 * @param {string} name
 * @returns {import("./late-parts.js").Parts}
 */
function partsIn(holder, name) {
  const all = String(holder);
  const text = all.slice(all.indexOf("\n") + 1, all.lastIndexOf("*/")).replaceAll("*\x01/", "*/");
  const script = new Script(text, { filename, cachedData: compiled(text, name) });
  return script.runInThisContext();
}

/**
 * Begins with the first line of the text that it was made from, and its own sum. V8 refuses by itself what another Node
 * made; of damage it knows nothing.
 * @param {string} text
 * @param {string} name
 */
function compiled(text, name) {
  try {
    const made = readFileSync(filename.replace(/\.mjs$/, `.${way}-${name}.compiled`));
    const line = text.slice(0, text.indexOf("\n"));
    const data = made.subarray(line.length + 4);
    const isOurs = made.toString("latin1", 0, line.length) === line;
    return isOurs && made.readUInt32LE(line.length) === crc32(data) ? data : undefined;
  } catch {
    return undefined;
  }
}
