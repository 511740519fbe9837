/** Text in pages for a printer: nothing that belongs together is parted, and every page says whose it is. */

import { filledTo } from "./text-fold.ts";
import type { Chunk } from "./text-table.ts";

const FORM_FEED = "\f";

/** Pages of `height` lines, each with `title` and its number on top, parted by form feeds. */
export function pagesOf(chunks: readonly Chunk[], title: string, width: number, height: number): string {
  const pages = filled(chunks, height - 2);
  return pages
    .map((lines, i) => [headLine(title, `page ${i + 1} of ${pages.length}`, width), "", ...lines].join("\n"))
    .join(`\n${FORM_FEED}`);
}

const headLine = (title: string, number: string, width: number): string =>
  `${filledTo(title, width - number.length)}${number}`;

function filled(chunks: readonly Chunk[], height: number): string[][] {
  const pages: string[][] = [[]];
  for (const { lines, heads } of chunks) {
    const page = pages.at(-1) as string[];
    if (page.length + lines.length <= height) page.push(...lines);
    // What is longer than a page goes on over as many as it takes.
    else for (const part of cut([...heads, ...lines], height)) pages.push(part);
  }
  return pages.map(withoutBlankStart).filter((lines) => lines.length > 0);
}

const cut = (lines: readonly string[], height: number): string[][] =>
  Array.from({ length: Math.ceil(lines.length / height) }, (_, i) =>
    lines.slice(i * height, (i + 1) * height),
  );

const withoutBlankStart = (lines: readonly string[]): string[] =>
  lines.slice(
    lines.findIndex((line) => line !== "") < 0 ? lines.length : lines.findIndex((line) => line !== ""),
  );
