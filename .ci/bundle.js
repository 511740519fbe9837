// Bundles src/main.tsx with everything it imports into dist/pumpside.js, one ESM file that needs nothing beside it.
// dist/pumpside.….compiled are what V8 makes of it: where they lie there, it is not made again at each start.

import "./check-node.js";
import { createHash } from "node:crypto";
import { mkdir, readdir, readFile, rename, rm, stat, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { oldestMajor } from "./check-node.js";
import { compile } from "./compile.js";

const root = fileURLToPath(new URL("..", import.meta.url));

/** Where the bundle is written: the file that starts it. */
export const bundlePath = join(root, "dist", "pumpside.js");

/**
 * The files of a bundle, the one that starts it last.
 * @param {string} file
 */
export const filesOf = (file) => [...Object.keys(usualWays).map((way) => compiledOf(file, way)), file];

const compiledOf = (/** @type {string} */ file, /** @type {string} */ way) =>
  file.replace(/\.js$/, `.${way}.compiled`);

const samples = join(root, "sample-cases");

/**
 * What a program is run with to see what a start needs, for each way that launch.js tells apart.
 * @typedef {{ verb?: string[][], screen?: string[][] }} Ways
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
  // V8 would compile every module at each start, not only those that are needed.
  optimization: { pifeForModuleWrappers: false },
  transform: {
    define: { "process.env.NODE_ENV": '"production"', "process.env.DEV": '"false"' },
  },
  output: {
    format: /** @type {const} */ ("esm"),
    // One file still: what is imported when it is needed is evaluated when it is needed.
    codeSplitting: false,
    // White space and dead branches go, and the names of what is local; functions keep theirs, so that a stack trace
    // can be read.
    minify: { compress: true, mangle: { toplevel: false, keepNames: true }, codegen: true },
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
    write: false,
    output: { ...settings.output, file },
  });
  await mkdir(dirname(file), { recursive: true });
  const program = asFunction(inAscii(output[0].code));
  await compileInto(file, program, ways);
  const launch = await readFile(join(root, ".ci", "launch.js"), "utf8");
  await replace(file, `${guard}\n${launch}${asComment(program)}`);
}

/**
 * @param {string} file of the bundle
 * @param {string} program its text
 * @param {Ways} ways
 */
async function compileInto(file, program, ways) {
  const alone = besideOf(file);
  await writeFile(alone, program);
  try {
    for (const [way, runs] of Object.entries(ways)) {
      const into = compiledOf(file, way);
      compile(alone, besideOf(into), runs);
      await rename(besideOf(into), into);
    }
  } finally {
    await rm(alone, { force: true });
  }
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
 * The program as a function, which V8 can compile ahead as it can no module; an arrow it would read twice. Its first line
 * is its name.
 * @param {string} code of a module that imports `createRequire` and exports nothing
 */
function asFunction(code) {
  const found = /^import\{createRequire\}from"node:module";(.*?)(?:export\{\};)?\s*$/s.exec(code);
  if (found === null) throw new Error("the program imports more than it should, or exports something");
  const [, module = ""] = found;
  const body = module.replaceAll("import.meta.url", "url");
  const name = createHash("sha256").update(body).digest("hex");
  return `// ${name}\n(async function(createRequire,url){${body}\n})`;
}

/**
 * The program where V8 passes over it and launch.js finds it; what would end the comment is written otherwise.
 * @param {string} program
 */
const asComment = (program) => `\n/* The program\n${program.replaceAll("*/", "*\x01/")}*/\n`;

/**
 * The same program in ASCII alone, which Node reads in half the time: outside it stand only texts and patterns.
 * @param {string} code
 */
const inAscii = (code) =>
  code.replace(/[^\0-\x7f]/g, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, "0")}`);

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
