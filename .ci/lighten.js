// Plugins for the bundler that take away what packages do at the start and the console does not need then.

import { fileURLToPath } from "node:url";
import { parseAst } from "rolldown/parseAst";

/** @typedef {import("rolldown").Plugin} Plugin */

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
 * A file of a package in which something is made otherwise. Throws where the place is not found in it.
 * @param {string} file
 * @param {RegExp} place where it is made
 * @param {(made: string) => readonly [instead: string, beside: string]} changed
 * @returns {Plugin}
 */
const changing = (file, place, changed) => ({
  name: `changing-${file}`,
  transform: {
    filter: { id: new RegExp(`${file}\\.js$`) },
    handler(code, id) {
      const [made] = place.exec(code) ?? [];
      if (made === undefined) throw new Error(`${id} is not what it was: ${place} is not in it.`);
      const [instead, beside] = changed(made);
      return { code: `${code.replace(place, () => instead)}\n${beside}`, map: null };
    },
  },
});

const LASTING = `import { lasting } from ${JSON.stringify(lasting)};`;

/** Ink cleans every text of every frame anew, parts it into cells anew and makes each blank cell anew. */
const lastingFrames = [
  changing("ink/build/sanitize-ansi", /(?<=^export default )sanitizeAnsi(?=;)/m, (made) => [
    `lasting(${made})`,
    LASTING,
  ]),
  changing("ink/build/output", /(?<=cached = )styledCharsFromTokens\(.*\)(?=;)/, (made) => [
    "cellsOf(line)",
    `${LASTING}\nconst cellsOf = lasting((line) => ${made});`,
  ]),
  changing("ink/build/output", /(?<=row\.push\()\{[^}]*\}(?=\))/, (made) => [
    "blank",
    `const blank = ${made};`,
  ]),
];

/** Each option of the command line is asked what a pattern of Unicode properties is made for: few come so far. */
const plainOptions = changing("commander/lib/option", /this\.variadic = /, (made) => [
  `${made}flags.includes("...") && `,
  "",
]);

/**
 * The layout's own machine code is made at once, from the text that it comes in: waited for, it could not be a part that
 * is run when it is needed.
 * @type {Plugin}
 */
const layoutAtOnce = {
  name: "layout-at-once",
  transform: {
    filter: { id: /yoga-layout\/dist\/(src\/index|binaries\/yoga-wasm-base64-esm)\.js$/ },
    handler(code, id) {
      const [from, to] = id.endsWith("index.js")
        ? [AWAITED, LAYOUT]
        : [/(?<=base64,)([A-Za-z0-9+/=]{1000,})([\s\S]*)$/, '$2\nexport const machineCode = "$1";'];
      if (!from.test(code)) throw new Error(`${id} is not what it was: ${from} is not in it.`);
      return { code: code.replace(from, to), map: null };
    },
  },
};

const AWAITED = /^import loadYoga from (.*);$([\s\S]*)await loadYoga\(\)/m;
const LAYOUT = `import loadYoga, { machineCode } from $1;
const layout = {
  instantiateWasm(imports, made) {
    const instance = new WebAssembly.Instance(
      new WebAssembly.Module(Buffer.from(machineCode, "base64")),
      imports,
    );
    made(instance);
    return instance.exports;
  },
};
loadYoga(layout);$2layout`;

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
 * What the bundler copies of a module in the older style, for each importer a property of its own for each name, is copied
 * once for all of them.
 * @type {Plugin}
 */
const copiedOnce = {
  name: "copied-once",
  renderChunk(code) {
    if (!code.includes("exports.__toESM = __toESM;")) return null;
    return { code: `${code}\n${COPIED_ONCE}`, map: null };
  },
};

const COPIED_ONCE = `const copies = [new Map(), new Map()];
exports.__toESM = (module, isNodeMode) => {
  const known = copies[isNodeMode ? 1 : 0];
  if (!known.has(module)) known.set(module, __toESM(module, isNodeMode));
  return known.get(module);
};`;

/** In the order in which they work. */
export const lightening = [
  withoutDevtools,
  oneWidth,
  lateSegmenter,
  ...lastingFrames,
  plainOptions,
  layoutAtOnce,
  latePatterns,
  copiedOnce,
];
