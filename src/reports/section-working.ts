/** How each figure was made, and what the reader has to be told at the end. */
import { CAUTIONS } from "../format/cautions.ts";
import { type Block, lines, pairs, type Section, table } from "./blocks.ts";
import { FIGURE_GROUPS, type FigureGroup, figureWords, valueText } from "./figure-words.ts";
import { figuresOf } from "./figures.ts";
import type { Kept, Report } from "./report.ts";

/** A table a group, with the formula and on whose word it stands; what belongs to a moment only while bypass is on. */
export function workingSection(report: Report): Section {
  const figures = figuresOf(report.file, report.at);
  const onBypass = report.run.timers.bypass.current !== null;
  const groups = (Object.keys(FIGURE_GROUPS) as FigureGroup[]).filter((group) => group !== "now" || onBypass);
  return {
    id: "working",
    title: "How each figure was made",
    blocks: groups.map((group) =>
      table(
        FIGURE_GROUPS[group],
        ["Figure", ">Value", "From", "~Source"],
        figures
          .filter(({ name }) => figureWords(name).group === group)
          .map(({ name, ...figure }) => [
            figureWords(name).label,
            valueText(name, figure),
            figure.working,
            figure.source ?? "",
          ]),
        "None.",
      ),
    ),
  };
}

/** Whether the file is as this program left it, and if not, why. */
export const wholeText = ({ faults: [first, ...others] }: Kept): string => {
  if (first === undefined) return "valid and whole: nothing was changed, removed or added by hand";
  return others.length === 0 ? first : `${first} And ${others.length} more: pumpside check lists them.`;
};

/** The cautions, and what tells this case's file from any other. */
export function endSection({ file, kept }: Report): Section {
  const seal: Block[] = kept
    ? [
        lines(
          "SHA-256 of the case file this was made from, and its seal (the hash of the last entry):",
          kept.checksum ?? "none: the file is damaged, and this is what could be recovered from it",
          kept.seal ?? "not sealed",
        ),
        pairs(["entries", String(file.entries.length)], ["the file", wholeText(kept)]),
      ]
    : [];
  return { id: "end", title: "Cautions and checksum", blocks: [lines(...CAUTIONS), ...seal] };
}
