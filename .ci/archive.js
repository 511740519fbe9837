// Archives of a folder, the same bytes for the same files: tar.gz for Linux and zip for Windows.

import { createReadStream, createWriteStream } from "node:fs";
import { readdir, readFile, stat } from "node:fs/promises";
import { basename, dirname, join, relative } from "node:path";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { crc32, createGzip, deflateRawSync } from "node:zlib";

/** @typedef {{ name: string, path: string, size: number, runs: boolean }} Kept a file by its name in the archive */

/**
 * The files below a folder in order of their names, which begin with the folder's own.
 * @param {string} folder
 * @returns {Promise<Kept[]>}
 */
async function filesIn(folder) {
  const found = (await readdir(folder, { recursive: true })).sort();
  const all = await Promise.all(
    found.map(async (name) => {
      const path = join(folder, name);
      const { size, mode } = await stat(path);
      const inArchive = relative(dirname(folder), path).replaceAll("\\", "/");
      return (await stat(path)).isFile() ? [{ name: inArchive, path, size, runs: (mode & 0o100) !== 0 }] : [];
    }),
  );
  return all.flat();
}

/**
 * Writes `folder` as a gzipped tar, with nobody as the owner and no time.
 * @param {string} folder
 * @param {string} file
 */
export async function writeTar(folder, file) {
  const entries = await filesIn(folder);
  async function* blocks() {
    for (const { name, path, size, runs } of entries) {
      yield tarHeader(name, size, runs ? 0o755 : 0o644);
      yield* createReadStream(path);
      yield Buffer.alloc((512 - (size % 512)) % 512);
    }
    yield Buffer.alloc(1024);
  }
  await pipeline(Readable.from(blocks()), createGzip({ level: 6 }), createWriteStream(file));
}

/**
 * @param {string} name
 * @param {number} size
 * @param {number} mode
 */
function tarHeader(name, size, mode) {
  if (Buffer.byteLength(name) > 100) throw new Error(`"${name}" is too long a name for the archive.`);
  const header = Buffer.alloc(512);
  const octal = (/** @type {number} */ value, /** @type {number} */ digits) =>
    `${value.toString(8).padStart(digits, "0")}\0`;
  header.write(name, 0);
  header.write(octal(mode, 7) + octal(0, 7) + octal(0, 7) + octal(size, 11) + octal(0, 11), 100);
  header.write(`${" ".repeat(8)}0`, 148);
  header.write("ustar\x0000", 257);
  const sum = header.reduce((total, byte) => total + byte, 0);
  header.write(`${sum.toString(8).padStart(6, "0")}\0 `, 148);
  return header;
}

/** Bytes before a name: version, flag for UTF-8, method, time (1980), check, sizes, lengths. */
const zipFields = (
  /** @type {number} */ check,
  /** @type {number} */ packed,
  /** @type {Kept} */ { size, name },
) => {
  const fields = Buffer.alloc(26);
  fields.writeUInt16LE(20, 0);
  fields.writeUInt16LE(0x0800, 2);
  fields.writeUInt16LE(8, 4);
  fields.writeUInt16LE(0x0021, 8);
  fields.writeUInt32LE(check, 10);
  fields.writeUInt32LE(packed, 14);
  fields.writeUInt32LE(size, 18);
  fields.writeUInt16LE(Buffer.byteLength(name), 22);
  return fields;
};

/**
 * Writes `folder` as a zip.
 * @param {string} folder
 * @param {string} file
 */
export async function writeZip(folder, file) {
  /** @type {Buffer[]} */
  const listed = [];
  const entries = await filesIn(folder);
  let at = 0;
  async function* parts() {
    for (const entry of entries) {
      const bytes = await readFile(entry.path);
      const packed = deflateRawSync(bytes);
      const name = Buffer.from(entry.name);
      const fields = zipFields(crc32(bytes), packed.length, entry);
      const place = Buffer.alloc(14);
      place.writeUInt32LE(at, 10);
      listed.push(Buffer.from("PK\x01\x02\x14\x00"), fields, place, name);
      yield Buffer.from("PK\x03\x04");
      yield fields;
      yield name;
      yield packed;
      at += 30 + name.length + packed.length;
    }
    const list = Buffer.concat(listed);
    const end = Buffer.alloc(22);
    end.write("PK\x05\x06");
    end.writeUInt16LE(entries.length, 8);
    end.writeUInt16LE(entries.length, 10);
    end.writeUInt32LE(list.length, 12);
    end.writeUInt32LE(at, 16);
    yield Buffer.concat([list, end]);
  }
  await pipeline(Readable.from(parts()), createWriteStream(file));
}

/** The archive of a folder, beside it. */
export const archiveName = (/** @type {string} */ folder) =>
  `${basename(folder)}${basename(folder).includes("win") ? ".zip" : ".tar.gz"}`;
