// Plugins for the bundler that take away what packages do at the start and the console does not need then.

import { readFileSync } from "node:fs";
import { createRequire, isBuiltin } from "node:module";
import { isAbsolute } from "node:path";
import { fileURLToPath } from "node:url";
import { parseAst } from "rolldown/parseAst";

/** @typedef {import("rolldown").Plugin} Plugin */

const require = createRequire(import.meta.url);
const widths = fileURLToPath(new URL("widths.js", import.meta.url));
const lasting = fileURLToPath(new URL("lasting.js", import.meta.url));
const segments = fileURLToPath(new URL("segments.js", import.meta.url));

/**
 * Ink reaches for its developer's tools when DEV is set, which the bundle never does.
 * @type {Plugin}
 */
export const withoutDevtools = {
  name: "without-devtools",
  resolveId: (id) => (id === "react-devtools-core" ? "\0no-devtools" : null),
  load: (id) => (id === "\0no-devtools" ? "export default {};" : null),
  transform: {
    filter: { id: /ink\/build\/reconciler\.js$/ },
    handler: (code) => ({ code: code.replaceAll("process.env['DEV'] === 'true'", "false"), map: null }),
  },
};

/**
 * Every package asks the same counter of columns, which needs the tables of emoji only for text that may hold some.
 * @type {Plugin}
 */
const oneWidth = {
  name: "one-width",
  resolveId: (id, importer) => (id === "string-width" && importer !== widths ? widths : null),
};

const SEGMENTER = /new Intl\.Segmenter\((?:undefined, \{ ?granularity: ['"]grapheme['"] ?\})?\)/g;

/**
 * The segmenter that a package makes when it is loaded is made with the first text that needs it.
 * @type {Plugin}
 */
const lateSegmenter = {
  name: "late-segmenter",
  transform: {
    filter: { id: /node_modules/, code: SEGMENTER },
    handler: (code) => ({
      code: `import { graphemes } from ${JSON.stringify(segments)};\n${code.replaceAll(SEGMENTER, "graphemes")}`,
      map: null,
    }),
  },
};

/**
 * A file of Ink in which what it makes of a text is kept. Throws where the place is not found in it.
 * @param {string} file
 * @param {RegExp} place what is made there
 * @param {(made: string) => readonly [instead: string, beside: string]} kept
 * @returns {Plugin}
 */
const keeping = (file, place, kept) => ({
  name: `keeping-${file}`,
  transform: {
    filter: { id: new RegExp(`ink/build/${file}\\.js$`) },
    handler(code, id) {
      const [made] = place.exec(code) ?? [];
      if (made === undefined) throw new Error(`${id} is not what it was: ${place} is not in it.`);
      const [instead, beside] = kept(made);
      const imported = `import { lasting } from ${JSON.stringify(lasting)};`;
      return { code: [imported, code.replace(place, () => instead), beside].join("\n"), map: null };
    },
  },
});

/** Ink cleans every text of every frame anew and parts it into cells anew: what came of it is kept. */
const lastingTexts = [
  keeping("sanitize-ansi", /(?<=^export default )sanitizeAnsi(?=;)/m, (made) => [`lasting(${made})`, ""]),
  keeping("output", /(?<=cached = )styledCharsFromTokens\(.*\)(?=;)/, (made) => [
    "cellsOf(line)",
    `const cellsOf = lasting((line) => ${made});`,
  ]),
];

/**
 * Layout's own code is read from the text it comes in: `fetch` would first load the whole of Node's HTTP client.
 * @type {Plugin}
 */
const withoutFetch = {
  name: "without-fetch",
  transform: {
    filter: { id: /yoga-wasm-base64-esm\.js$/ },
    handler: (code) => ({ code: `const fetch = undefined;\n${code}`, map: null }),
  },
};

/**
 * A pattern that names Unicode properties is checked against their tables even where it is only read past. Made from a
 * string, it waits until it is used.
 * @type {Plugin}
 */
const latePatterns = {
  name: "late-patterns",
  transform: {
    filter: { code: /\\p\{/ },
    handler(code, id) {
      const lang = /\.tsx$/.test(id) ? "tsx" : /\.ts$/.test(id) ? "ts" : "js";
      const found = patternsIn(parseAst(code, { lang }));
      let later = code;
      found.reverse().forEach(({ start, end, regex: { pattern, flags } }, place) => {
        const made = `new RegExp(${JSON.stringify(pattern)}, "${flags}")`;
        // One that remembers where it stopped is made anew each time, as the literal would be.
        const name = `latePattern${place}`;
        const once = /[gy]/.test(flags) ? made : `(${name} ??= ${made})`;
        later = `${later.slice(0, start)}${once}${later.slice(end)}`;
        if (once !== made) later += `\nvar ${name};`;
      });
      return { code: later, map: null };
    },
  },
};

/**
 * The regular expressions of a syntax tree that name Unicode properties, in the order of the text.
 * @param {unknown} node
 * @returns {{ start: number, end: number, regex: { pattern: string, flags: string } }[]}
 */
function patternsIn(node) {
  if (node === null || typeof node !== "object") return [];
  if ("regex" in node && node.regex) {
    const literal = /** @type {ReturnType<typeof patternsIn>[number]} */ (node);
    return literal.regex.pattern.includes("\\p{") ? [literal] : [];
  }
  return Object.values(node).flatMap(patternsIn);
}

/**
 * Node's own modules are loaded with the first thing of theirs that is used, not all of them before the first line runs.
 * @type {Plugin}
 */
const lateBuiltins = {
  name: "late-builtins",
  resolveId(id, importer) {
    if (importer?.startsWith(BUILTIN)) return { id: `node:${bare(id)}`, external: true };
    // The bundler's own `require` comes from this one.
    if (bare(id) === "module") return null;
    return isBuiltin(id) ? `${BUILTIN}${bare(id)}` : null;
  },
  load(id) {
    if (!id.startsWith(BUILTIN)) return null;
    const name = `node:${id.slice(BUILTIN.length)}`;
    const builtin = require(name);
    // What is a class or an object with a life of its own, as `events` and `process` are, has to be that very one.
    const isPlain = Object.getPrototypeOf(builtin) === Object.prototype;
    return isPlain ? lateModule(name, Object.keys(builtin)) : `module.exports = require("${name}");`;
  },
};

const BUILTIN = "\0builtin:";

/**
 * Modules of ours that hold schemas are evaluated with the first schema that is used: most of a start needs none, and
 * building all of them takes longer than drawing the first screen.
 * @type {Plugin}
 */
const lateSchemas = {
  name: "late-schemas",
  resolveId: {
    filter: { id: /^\.\.?\// },
    async handler(id, importer) {
      if (importer === undefined || importer.startsWith(SCHEMAS) || /node_modules/.test(importer))
        return null;
      const found = await this.resolve(id, importer, { skipSelf: true });
      return found !== null && holdsSchemas(found.id) ? `${SCHEMAS}${found.id}` : null;
    },
  },
  load(id) {
    if (!id.startsWith(SCHEMAS)) return null;
    const path = id.slice(SCHEMAS.length);
    const text = readFileSync(path, "utf8");
    const other = /^export (?!const |function |async function |type ).*/m.exec(text);
    if (other) throw new Error(`${path} holds schemas, and "${other[0]}" would not be found there.`);
    const exported = text.matchAll(/^export (?:const|(?:async )?function) (\w+)/gm);
    return lateModule(
      path,
      Array.from(exported, ([, name = ""]) => name),
    );
  },
};

const SCHEMAS = "\0schemas:";

/** @param {string} path */
const holdsSchemas = (path) =>
  isAbsolute(path) && /^import \* as z from "zod";$/m.test(readFileSync(path, "utf8"));

/**
 * The code of a module that has the same names as another one, which is loaded when one of them is asked for. They stand
 * on its prototype, where the bundle has them without copying each of them for each importer.
 * @param {string} other
 * @param {readonly string[]} names
 */
const lateModule = (other, names) => `let loaded;
const late = {};
for (const name of ${JSON.stringify(names)})
  Object.defineProperty(late, name, { get: () => (loaded ??= require(${JSON.stringify(other)}))[name] });
module.exports = Object.create(late);`;

/** @param {string} id */
const bare = (id) => id.replace(/^node:/, "");

/** In the order in which they work. */
export const lightening = [
  withoutDevtools,
  oneWidth,
  lateSegmenter,
  ...lastingTexts,
  lateBuiltins,
  lateSchemas,
  withoutFetch,
  latePatterns,
];
