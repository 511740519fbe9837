// The program as text: what the bundler wrote, each module a function that can be compiled ahead and is run when it is
// needed.

import { createHash } from "node:crypto";
import { createRequire, isBuiltin } from "node:module";
import { basename } from "node:path";

const require = createRequire(import.meta.url);

/** The part that is run first. */
export const ENTRY = "./the program";

/**
 * How the bundler writes the program down: a module a file, all of them in one folder, named alike wherever the project
 * lies.
 * @type {import("rolldown").OutputOptions}
 */
export const asParts = {
  format: "cjs",
  preserveModules: true,
  entryFileNames: ({ name }) => `${basename(name)}.js`,
};

/**
 * A part of the program, and its code.
 * @typedef {{ id: string, code: string }} Part
 */

/**
 * The parts of the program, Node's own modules among them as far as they can wait.
 * @param {readonly import("rolldown").OutputChunk[]} chunks
 * @returns {Part[]}
 */
export function partsOf(chunks) {
  const required = chunks.flatMap(({ code }) => Array.from(code.matchAll(REQUIRED), ([, id = ""]) => id));
  return [
    ...[...new Set(required)]
      .filter((id) => isBuiltin(id) && canWait(id))
      .sort()
      .map(ofNode),
    ...chunks.map(({ isEntry, fileName, code }) => ({
      id: isEntry ? ENTRY : `./${fileName}`,
      code: inAscii(code),
    })),
  ];
}

const REQUIRED = /\brequire\([`"']([\w:/]+)[`"']\)/g;

/**
 * What Node has loaded before anything of ours need not; what is a class or an object with a life of its own, as `events`
 * and `process` are, has to be that very one.
 * @param {string} builtin
 */
const canWait = (builtin) =>
  !LOADED.test(builtin) && Object.getPrototypeOf(require(builtin)) === Object.prototype;

const LOADED = /^(node:)?(fs|path|url|util)$/;

const ofNode = (/** @type {string} */ id) => ({
  id,
  code: `Object.defineProperties(exports,Object.getOwnPropertyDescriptors(node("${id}")))`,
});

/**
 * The program in two texts for V8 to compile, each an object of parts.
 * @param {readonly Part[]} parts
 * @param {ReadonlySet<string>} ids of those that come first; with them come Node's own
 */
export function textsOf(parts, ids) {
  const isFirst = (/** @type {Part} */ { id }) => ids.has(id) || isBuiltin(id);
  return { first: named(parts.filter(isFirst)), rest: named(parts.filter((part) => !isFirst(part))) };
}

/**
 * After a line by which it is known.
 * @param {readonly Part[]} parts
 */
function named(parts) {
  const functions = parts.map(
    ({ id, code }) => `${JSON.stringify(id)}:function(exports,require,url,node){${code}\n}`,
  );
  const body = `({${functions.join(",\n")}})`;
  return `// ${createHash("sha256").update(body).digest("hex")}\n${body}`;
}

/**
 * The same code in ASCII alone, which Node reads in half the time: outside it stand only texts and patterns.
 * @param {string} code
 */
const inAscii = (code) =>
  code.replace(/[^\0-\x7f]/g, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, "0")}`);
