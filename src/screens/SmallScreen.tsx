/** A terminal that is too small: the timers, the entry line and a sentence. The keys still work. */
import { Box, Text } from "ink";
import { isUnsaved, type Model, typingIn } from "../console/model.ts";
import { asked, meaning } from "../console/open-line.ts";
import type { Run } from "../figures/run.ts";
import { harmless } from "../format/text.ts";
import { cutTo } from "./fit.ts";
import { drawnRows, LEAST, type Size } from "./size.ts";
import { tilesOf } from "./Timers.tsx";

export function SmallScreen({ model, run, size }: { model: Model; run: Run; size: Size }) {
  const { columns } = size;
  const rows = drawnRows(size);
  const saved = isUnsaved(model)
    ? `${model.trouble === null ? "saving" : "NOT SAVED"} ${model.file.entries.length - model.saved}`
    : `saved ${model.saved}`;
  const lines = [
    typedLine(model),
    ...tilesOf(run).map(({ label, value, detail }) => `${label.toLowerCase()} ${value}  ${detail}`),
    `${run.course.phase} · ${saved}`,
    meaning(model).text || asked(model).asks || (model.notice ?? ""),
    `This terminal is ${size.columns}×${size.rows}; the console needs ${LEAST.columns}×${LEAST.rows}. Keys still work.`,
  ];
  return (
    <Box flexDirection="column" height={rows}>
      {lines.slice(0, rows).map((line) => (
        <Text key={line} wrap="truncate">
          {cutTo(line, Math.max(1, columns - 1)) || " "}
        </Text>
      ))}
    </Box>
  );
}

/** First of all, so that even a single row shows what is being typed. */
function typedLine(model: Model): string {
  const { mode } = model;
  const typing = typingIn(mode);
  if (typing === null) return ">";
  const label = mode.name === "line" ? mode.stroke : asked(model).label;
  return `> ${label} ${harmless(typing.text)}`;
}
