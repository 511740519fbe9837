// Bundles src/main.tsx with everything it imports into dist/pumpside.mjs, one ESM file that needs nothing beside it.
// dist/pumpside.….compiled are what V8 makes of it: where they lie there, it is not made again at each start.

import "./check-node.js";
import { mkdir, readdir, rename, rm, stat, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { oldestMajor } from "./check-node.js";
import { compile } from "./compile.js";
import { asParts, partsOf, textsOf } from "./program.js";

const root = fileURLToPath(new URL("..", import.meta.url));

/** Where the bundle is written: the file that starts it. */
export const bundlePath = join(root, "dist", "pumpside.mjs");

/**
 * The files of a bundle, the one that starts it last.
 * @param {string} file
 */
export const filesOf = (file) => [
  ...Object.keys(usualWays).flatMap((way) => [compiledOf(file, way, "first"), compiledOf(file, way, "rest")]),
  file,
];

/**
 * @param {string} file of the bundle
 * @param {string} way
 * @param {keyof Texts} part
 */
const compiledOf = (file, way, part) => file.replace(/\.mjs$/, `.${way}-${part}.compiled`);

const launch = join(root, ".ci", "launch.js");
const samples = join(root, "sample-cases");

/**
 * What a program is run with to see what a start needs, for each way that launch.js tells apart.
 * @typedef {{ verb?: string[][], screen: string[][] }} Ways
 * @typedef {import("./compile.js").Texts} Texts
 * @type {Ways}
 */
const usualWays = {
  verb: [["keys"], ["list", "--dir", samples], ["figures", join(samples, "adult-coronary.json")]],
  screen: [["--dir", samples]],
};

// The installed command may meet any Node, so the bundle itself says what it needs before it does anything.
const guard = `#!/usr/bin/env node
if (Number.parseInt(process.versions.node, 10) < ${oldestMajor}) {
  process.stderr.write(\`pumpside needs Node ${oldestMajor} or later and this is \${process.versions.node}; inside the project, npm scripts bring their own.\\n\`);
  process.exit(1);
}`;

/**
 * How the program is bundled, but for its plugins.
 * @satisfies {import("rolldown").BuildOptions}
 */
export const settings = {
  platform: /** @type {const} */ ("node"),
  logLevel: /** @type {const} */ ("warn"),
  transform: {
    define: { "process.env.NODE_ENV": '"production"', "process.env.DEV": '"false"' },
  },
  output: {
    // White space and dead branches go, and the names of what is local; functions keep theirs, so that a stack trace
    // can be read.
    minify: { compress: true, mangle: { toplevel: true, keepNames: true }, codegen: true },
  },
};

/**
 * Writes a bundle. Throws what the bundler says when the sources do not fit together.
 * @param {{ input?: string, file?: string, cwd?: string, ways?: Ways }} [what] the console
 *   unless told otherwise
 */
export async function bundle({
  input = "src/main.tsx",
  file = bundlePath,
  cwd = root,
  ways = usualWays,
} = {}) {
  const [{ build }, { lightening }] = await Promise.all([import("rolldown"), import("./lighten.js")]);
  const { output } = await build({
    ...settings,
    cwd,
    input,
    plugins: lightening,
    transform: { define: { ...settings.transform.define, "import.meta.url": "url" } },
    write: false,
    output: { ...settings.output, ...asParts },
  });
  const parts = partsOf(output.filter((one) => one.type === "chunk"));
  await mkdir(dirname(file), { recursive: true });
  const everything = textsOf(parts, new Set(parts.map(({ id }) => id)));
  const shown = await writtenDown(file, everything, (texts) => compile({ texts, runs: ways.screen }));
  const program = textsOf(parts, new Set(shown));
  await writtenDown(file, program, async (texts) => {
    for (const [way, runs] of Object.entries(ways)) await compileInto(file, texts, way, runs);
  });
  const head = await build({ input: launch, platform: "node", write: false });
  const text = [guard, head.output[0].code, held("theFirst", program.first), held("theRest", program.rest)];
  await replace(file, text.join("\n"));
}

/**
 * Does something with the texts of the program while they lie in files of their own.
 * @template T
 * @param {string} file of the bundle
 * @param {Texts} texts
 * @param {(where: Texts) => T | Promise<T>} act
 */
async function writtenDown(file, texts, act) {
  const where = { first: besideOf(`${file}.first`), rest: besideOf(`${file}.rest`) };
  try {
    await writeFile(where.first, texts.first);
    await writeFile(where.rest, texts.rest);
    return await act(where);
  } finally {
    for (const path of Object.values(where)) await rm(path, { force: true });
  }
}

/**
 * @param {string} file of the bundle
 * @param {Texts} texts where the program lies
 * @param {string} way
 * @param {string[][]} runs
 */
async function compileInto(file, texts, way, runs) {
  const into = { first: compiledOf(file, way, "first"), rest: compiledOf(file, way, "rest") };
  compile({ texts, runs, into: { first: besideOf(into.first), rest: besideOf(into.rest) } });
  for (const path of Object.values(into)) await rename(besideOf(path), path);
}

/**
 * Whole or not at all: somebody may be starting it.
 * @param {string} file
 * @param {string} text
 */
async function replace(file, text) {
  await writeFile(besideOf(file), text, { mode: 0o755 });
  await rename(besideOf(file), file);
}

const besideOf = (/** @type {string} */ file) => `${file}.${process.pid}`;

/**
 * A text of the program where V8 passes over it and launch.js finds it: in the comment of a function. What would end the
 * comment is written otherwise.
 * @param {string} name of the function
 * @param {string} text
 */
const held = (name, text) => `function ${name}() {/*\n${text.replaceAll("*/", "*\x01/")}*/}\n`;

/**
 * Newest change under a path in milliseconds, folders included so that a deleted file counts too; 0 where it is missing.
 * @param {string} path
 * @returns {Promise<number>}
 */
async function newestChange(path) {
  const found = await stat(path).catch(() => undefined);
  if (found === undefined) return 0;
  if (!found.isDirectory()) return found.mtimeMs;
  const inside = await Promise.all((await readdir(path)).map((name) => newestChange(join(path, name))));
  return Math.max(found.mtimeMs, ...inside);
}

/** Whether the bundle is missing or older than what it is made from. */
export async function isStale() {
  const sources = ["src", "package-lock.json", ".ci"].map((path) => newestChange(join(root, path)));
  return Math.max(...(await Promise.all(sources))) > (await newestChange(bundlePath));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await bundle().catch((/** @type {Error} */ problem) => {
    process.stderr.write(`${problem.message}\n`);
    process.exitCode = 1;
  });
}
