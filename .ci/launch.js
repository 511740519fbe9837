// Runs the program that stands in the comment below, from what V8 made of it when it was built where that lies beside
// this file and fits this Node.

import { createRequire } from "node:module";

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
const [, comment = ""] = readFileSync(filename, "latin1").split("\n/* The program\n");
const text = comment.slice(0, comment.lastIndexOf("*/")).replaceAll("*\x01/", "*/");
const program = new Script(text, { filename, cachedData: compiled() });
await program.runInThisContext()(createRequire, import.meta.url);

/**
 * Begins with the first line of the text that it was made from, and its own sum. V8 refuses by itself what another Node
 * made; of damage it knows nothing.
 */
function compiled() {
  try {
    const made = readFileSync(filename.replace(/\.js$/, `.${way}.compiled`));
    const name = text.slice(0, text.indexOf("\n"));
    const data = made.subarray(name.length + 4);
    const isOurs = made.toString("latin1", 0, name.length) === name;
    return isOurs && made.readUInt32LE(name.length) === crc32(data) ? data : undefined;
  } catch {
    return undefined;
  }
}
