// What the program is made of: a CycloneDX bill of materials and the licences of everything that is handed on with it.

import { execFileSync } from "node:child_process";
import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));

/** Licences, as SPDX names them, that may be handed on with a program under the MIT licence. */
export const allowedLicences = [
  "MIT",
  "ISC",
  "BSD-2-Clause",
  "BSD-3-Clause",
  "Apache-2.0",
  "CC0-1.0",
  "0BSD",
];

/** @typedef {{ path: string, name: string, version: string, licence: string }} Handed */

/**
 * The packages that are handed on, from the lock file; the runtime is not among them.
 * @returns {Promise<Handed[]>}
 */
export async function handedOn() {
  const { packages } = JSON.parse(await readFile(join(root, "package-lock.json"), "utf8"));
  return Object.entries(packages)
    .filter(([path, { dev, optional, devOptional }]) => path !== "" && !dev && !optional && !devOptional)
    .map(([path, { version, license }]) => ({
      path,
      name: path.replace(/^.*node_modules\//, ""),
      version,
      licence: license,
    }));
}

/**
 * Whether a licence expression leaves a choice that we may hand on: "MIT", "(MIT OR CC0-1.0)".
 * @param {string} expression
 */
export const isAllowed = (expression) =>
  expression
    .replaceAll(/[()]/g, "")
    .split(" OR ")
    .some((choice) => choice.split(" AND ").every((licence) => allowedLicences.includes(licence)));

/** The licences of all packages in one text. */
export async function licencesText() {
  const parts = await Promise.all(
    (await handedOn()).map(async ({ path, name, version, licence }) => {
      const file = (await readdir(join(root, path))).find((found) => /^licen[cs]e/i.test(found));
      const text = file
        ? await readFile(join(root, path, file), "utf8")
        : `It comes without a text of its own; its licence is ${licence}.`;
      return `${name} ${version} (${licence})\n${"-".repeat(72)}\n${text.replaceAll("\r\n", "\n").trim()}\n`;
    }),
  );
  return `pumpside.mjs holds these packages, each under its own licence.\n\n${parts.join("\n\n")}`;
}

/**
 * The bill of materials of the bundle, by npm from the lock file, and of the runtime beside it. The same sources give
 * the same text: the moment and the number that npm adds are left out.
 * @param {{ name: string, version: string, integrity: string }} runtime
 */
export async function bomText({ name, version, integrity }) {
  const asked = ["sbom", "--sbom-format", "cyclonedx", "--sbom-type", "application"];
  const told = execFileSync("npm", [...asked, "--omit", "dev", "--omit", "optional", "--offline"], {
    cwd: root,
    encoding: "utf8",
    shell: process.platform === "win32",
    stdio: ["ignore", "pipe", "ignore"],
  });
  const bom = JSON.parse(told);
  bom.serialNumber = undefined;
  bom.metadata.timestamp = undefined;
  bom.metadata.component.name = "pumpside";
  bom.components.push({
    "bom-ref": `${name}@${version}`,
    type: "platform",
    name,
    version,
    purl: `pkg:npm/${name}@${version}`,
    hashes: [{ alg: "SHA-512", content: Buffer.from(integrity.slice(7), "base64").toString("hex") }],
    licenses: [{ license: { id: "MIT" } }],
  });
  return `${JSON.stringify(bom, null, 2)}\n`;
}
