// Makes a folder, and its archive, that runs on a machine without Node, network or rights: `npm run portable -- --for win-x64`.

import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { chmod, copyFile, cp, mkdir, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { basename, dirname, join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { archiveName, writeTar, writeZip } from "./archive.js";
import { bomText, licencesText } from "./bill.js";
import { bundle, bundlePath, filesOf, isStale } from "./bundle.js";
import { launchers, portableReadme } from "./launchers.js";
import { placeRuntime, runtimes } from "./runtime.js";

/** @typedef {import("./runtime.js").Platform} Platform */

const root = fileURLToPath(new URL("..", import.meta.url));
const { version } = JSON.parse(await readFile(join(root, "package.json"), "utf8"));

/**
 * Makes the folder in `into` and gives its path.
 * @param {Platform} platform
 * @param {string} into
 * @param {(platform: Platform, folder: string) => Promise<void>} [placing] brings the runtime
 */
export async function makeFolder(platform, into, placing = placeRuntime) {
  if (await isStale()) await bundle();
  const folder = join(into, `pumpside-${version}-${platform}`);
  await rm(folder, { recursive: true, force: true });
  await mkdir(join(folder, "completion"), { recursive: true });
  for (const file of programFor(platform)) await copyFile(file, join(folder, basename(file)));
  await cp(join(root, "sample-cases"), join(folder, "sample-cases"), { recursive: true });
  await copyFile(join(root, "LICENSE"), join(folder, "LICENSE"));
  await placing(platform, join(folder, "runtime"));
  const { file, text } = launchers[platform];
  const texts = {
    [file]: text,
    "README.txt": portableReadme(platform, version),
    "MANUAL.txt": said("manual"),
    "completion/pumpside.bash": said("completion", "bash"),
    "completion/_pumpside": said("completion", "zsh"),
    "completion/pumpside.ps1": said("completion", "powershell"),
    "licences.txt": await licencesText(),
    "bom.cdx.json": await bomText(runtimes[platform]),
  };
  for (const [name, words] of Object.entries(texts)) await writeFile(join(folder, name), words);
  await writeFile(join(folder, "SHA256SUMS"), await sums(folder));
  // For every user, whatever the masks here are.
  for (const path of await filesIn(folder))
    await chmod(path, /^(pumpside(\.mjs|\.cmd)?|node(\.exe)?)$/.test(basename(path)) ? 0o755 : 0o644);
  return folder;
}

/**
 * The files of the program; what was compiled here is of no use on another platform.
 * @param {Platform} platform
 */
const programFor = (platform) =>
  filesOf(bundlePath).filter(
    (file) => !file.endsWith(".compiled") || platform === `${process.platform}-${process.arch}`,
  );

/** What a verb of the program prints. */
const said = (/** @type {string[]} */ ...words) =>
  execFileSync(process.execPath, [bundlePath, ...words], { encoding: "utf8" });

/** @param {string} folder */
async function sums(folder) {
  const lines = (await filesIn(folder)).map(async (path) => {
    const sum = createHash("sha256").update(await readFile(path));
    return `${sum.digest("hex")}  ${relative(folder, path).replaceAll("\\", "/")}\n`;
  });
  return (await Promise.all(lines)).join("");
}

/** @param {string} folder */
const filesIn = async (folder) =>
  (await readdir(folder, { recursive: true, withFileTypes: true }))
    .filter((one) => one.isFile())
    .map((one) => join(one.parentPath, one.name))
    .sort();

/**
 * Makes the folder and its archive in dist/portable.
 * @param {string} asked
 */
async function portable(asked) {
  if (!(asked in runtimes))
    throw new Error(`"${asked}" is no platform we make: name one of ${Object.keys(runtimes).join(", ")}.`);
  const platform = /** @type {Platform} */ (asked);
  const folder = await makeFolder(platform, join(root, "dist", "portable"));
  const archive = join(dirname(folder), archiveName(folder));
  await (archive.endsWith(".zip") ? writeZip : writeTar)(folder, archive);
  process.stdout.write(`${folder}\n${archive}\n`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { values } = parseArgs({ options: { for: { type: "string", default: "linux-x64" } } });
  await portable(values.for).catch((/** @type {Error} */ problem) => {
    process.stderr.write(`${problem.message}\n`);
    process.exitCode = 1;
  });
}
