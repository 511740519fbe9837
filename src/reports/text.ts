/** The report as text: fits a page, for a printer and for pasting into a hospital system. */
import { harmless } from "../format/text.ts";
import type { Block, Section } from "./blocks.ts";
import { dayAndClock, type Report } from "./report.ts";
import { openingSections, sectionsAfter } from "./sections.ts";
import { asciiOf, inAsciiThroughout } from "./text-ascii.ts";
import { filledTo, foldedTo } from "./text-fold.ts";
import { pagesOf } from "./text-pages.ts";
import { type Chunk, chunk, tableChunks } from "./text-table.ts";

/** Columns of a page. */
export const TEXT_WIDTH = 78;
/** Lines of a page, on A4 and Letter alike at six to the inch. */
const PAGE_HEIGHT = 60;
/** What of the title stands on every page, beside the time and the page's number. */
const HEAD_WIDTH = 44;

export type TextOptions = {
  /** Nothing but ASCII. */
  readonly ascii?: boolean | undefined;
  /** Parted into pages with a head on each and form feeds between them. */
  readonly pages?: boolean | undefined;
};

/** No line of it is longer than `TEXT_WIDTH`; in plain ASCII, or parted into pages, where that is asked for. */
export function textReport(report: Report, { ascii, pages }: TextOptions = {}): string {
  const written = ascii ? inAsciiThroughout<readonly Section[]> : (sections: readonly Section[]) => sections;
  const label = harmless(report.file.label);
  const title = foldedTo(`PERFUSION RECORD: ${ascii ? asciiOf(label) : label}`, TEXT_WIDTH);
  const chunks = [
    chunk([...title, "=".repeat(TEXT_WIDTH), ""]),
    ...written([...openingSections(report), ...sectionsAfter(report)]).flatMap(sectionChunks),
  ];
  const head = `${foldedTo(title[0] ?? "", HEAD_WIDTH)[0]}  ${dayAndClock(report, report.at.ms).slice(0, -3)}`;
  const text = pages
    ? pagesOf(chunks, head, TEXT_WIDTH, PAGE_HEIGHT)
    : chunks.flatMap(({ lines }) => lines).join("\n");
  return `${text.trimEnd()}\n`;
}

/** The title stays with what comes first under it. */
export function sectionChunks({ title, blocks }: Section): Chunk[] {
  const heading = [title.toUpperCase(), "-".repeat(title.length)];
  const [first, ...others] = blocks.flatMap(blockChunks);
  return [chunk([...heading, ...(first?.lines ?? [""])]), ...others];
}

function blockChunks(block: Block): Chunk[] {
  switch (block.kind) {
    case "table":
      return tableChunks(block, TEXT_WIDTH);
    case "pairs":
      return [chunk([...pairLines(block.pairs), ""])];
    case "lines":
      return [chunk([...block.lines.flatMap((line) => foldedTo(line, TEXT_WIDTH)), ""])];
    case "signatures":
      return [chunk(["Signed:", ...block.people.flatMap(signatureLines), ""])];
    default:
      return block satisfies never;
  }
}

const LABEL = 30;

const pairLines = (all: readonly (readonly [string, string])[]): string[] =>
  all.flatMap(([name, value]) =>
    foldedTo(value, TEXT_WIDTH - LABEL - 2).map(
      (line, i) => `${filledTo(i === 0 ? name : "", LABEL)}  ${line}`,
    ),
  );

const signatureLines = (who: string): string[] => [
  "",
  "",
  `  ${"_".repeat(36)}   ${"_".repeat(20)}`,
  ...foldedTo(who, TEXT_WIDTH - 2).map((line) => `  ${line}`),
];
