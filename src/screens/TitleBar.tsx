/** The first row: phase, case, operator, what is saved, and the time. */
import { Box, Text } from "ink";
import { isUnsaved, type Model } from "../console/model.ts";
import type { Run } from "../figures/run.ts";
import { clockTime, type Instant } from "../format/instant.ts";
import { harmless } from "../format/text.ts";
import { cutTo } from "./fit.ts";

export function TitleBar({
  model,
  run,
  now,
  columns,
}: {
  model: Model;
  run: Run;
  now: Instant;
  columns: number;
}) {
  const { course } = run;
  return (
    <Box justifyContent="space-between">
      <Text wrap="truncate">
        <Text inverse bold>{` ${course.phase.toUpperCase()} `}</Text>
        {`  ${cutTo(harmless(model.file.label), columns - 58)}`}
        <Text dimColor> pump </Text>
        {harmless(course.operator) || "–"}
      </Text>
      <Text wrap="truncate">
        <SavedState model={model} />
        <Text bold>{`  ${clockTime(now)}`}</Text>
      </Text>
    </Box>
  );
}

/** The words change with the state, so that colour only repeats them. */
export function savedText(model: Model): string {
  const held = model.file.entries.length - model.saved;
  if (!isUnsaved(model)) return `saved ${model.saved}`;
  return `${model.trouble === null ? "saving" : "NOT SAVED"} ${held}`;
}

export function SavedState({ model }: { model: Model }) {
  const text = savedText(model);
  if (!isUnsaved(model)) return <Text color="green">{text}</Text>;
  if (model.trouble === null) return <Text color="yellow">{text}</Text>;
  return <Text color="red" inverse bold>{` ${text} `}</Text>;
}
