// Golden frames: a text file each, compared row by row; GOLDEN=update takes the frames as they are now.

import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect } from "vitest";

const folder = fileURLToPath(new URL("golden", import.meta.url));
const updates = process.env.GOLDEN === "update";

const pathOf = (name: string): string => join(folder, `${name}.txt`);

/** Fails with a row-by-row difference where the frame is not the one that was taken. */
export function expectGolden(name: string, rows: readonly string[]): void {
  const text = `${rows.join("\n")}\n`;
  if (updates) {
    mkdirSync(folder, { recursive: true });
    writeFileSync(pathOf(name), text);
    return;
  }
  expect(text, `${name} has changed; GOLDEN=update takes the new frame`).toBe(kept(name));
}

/** Every golden file that no test has asked for; `GOLDEN=update` removes them. */
export function orphans(names: readonly string[]): string[] {
  const known = new Set(names.map((name) => `${name}.txt`));
  const found = readdirSync(folder).filter((file) => !known.has(file));
  if (!updates) return found;
  for (const file of found) rmSync(join(folder, file));
  return [];
}

function kept(name: string): string {
  try {
    return readFileSync(pathOf(name), "utf8");
  } catch {
    return "(no such frame has been taken yet)\n";
  }
}
