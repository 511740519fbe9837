/** A line across the screen, with a word on it. */
import { Text } from "ink";
import { memo } from "react";

export const Rule = memo(function Rule({ title, columns }: { title: string; columns: number }) {
  return (
    <Text
      dimColor
      wrap="truncate"
    >{`── ${title} ${"─".repeat(Math.max(0, columns - title.length - 4))}`}</Text>
  );
});
