/** The checklists: which there are with what is open, and the items of the one that is open. */
import { Box, Text } from "ink";
import type { ChecklistMode } from "../console/model.ts";
import { checkStates, openItems, stateOf } from "../figures/checks.ts";
import type { Course } from "../figures/run.ts";
import { harmless } from "../format/text.ts";
import { column } from "./fit.ts";

const SIGNS = { done: "[x]", "not-applicable": "[–]", open: "[ ]" } as const;

type Props = {
  readonly course: Course;
  readonly mode: ChecklistMode;
  readonly columns: number;
  readonly rows: number;
};

export function ChecklistPanel({ course, mode, columns, rows }: Props) {
  const states = checkStates(course.record.facts);
  const { checklists } = course.protocol;
  const list = checklists.find(({ id }) => id === mode.list);
  const lines = list
    ? list.items.map(
        ({ id, group, text }) =>
          `${SIGNS[stateOf(states, list.id, id)]} ${harmless(group ? `${group}: ${text}` : text)}`,
      )
    : checklists.map(
        (one) =>
          `${one.letter}  ${column(harmless(one.name), 34)} ${openItems(one, states).length} of ${one.items.length} open`,
      );
  const room = Math.max(1, rows - 1);
  const first = Math.max(0, Math.min(mode.item - Math.floor(room / 2), lines.length - room));
  const hint = list
    ? `${openItems(list, states).length} open · Enter done · n not applicable · u open again · Esc the lists`
    : "a letter opens a list · Esc back";
  return (
    <Box flexDirection="column" height={rows}>
      <Text wrap="truncate" dimColor>{` ${column(hint, columns - 2)}`}</Text>
      {lines.slice(first, first + room).map((line, place) => (
        <Text key={line} wrap="truncate" inverse={first + place === mode.item}>
          {` ${column(line, columns - 2)}`}
        </Text>
      ))}
    </Box>
  );
}
