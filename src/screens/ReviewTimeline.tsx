/** The timeline of a case: as many of its rows as fit, about the chosen one. */
import { Box, Text } from "ink";
import type { Within } from "../console/review-modes.ts";
import { chosenPlace, GROUPS, rowsOf, shownRows } from "../console/review-timeline.ts";
import { harmless } from "../format/text.ts";
import { Choices, choiceRows } from "./Choices.tsx";
import { LogRow } from "./Log.tsx";
import { Rule } from "./Rule.tsx";

type Props = { readonly review: Within; readonly columns: number; readonly rows: number };

const LETTERS = GROUPS.map(({ letter, name }) => [letter, name] as const);

export function ReviewTimeline({ review, columns, rows }: Props) {
  const { file, timeline, mode } = review;
  const shown = shownRows(file, timeline);
  const place = chosenPlace(file, timeline);
  const choices = mode.name === "kinds" ? LETTERS : [];
  const most = Math.max(0, rows - 3);
  const room = Math.max(1, rows - 1 - choiceRows(choices, columns, most));
  const first = Math.max(0, Math.min(place - Math.floor(room / 2), shown.length - room));
  return (
    <Box flexDirection="column" height={rows}>
      <Rule title={titleOf(review, shown.length, place)} columns={columns} />
      <Box flexDirection="column" height={room}>
        {shown.length === 0 ? <Text> No entry is like that. Esc shows all.</Text> : null}
        {shown.slice(first, first + room).map(({ fact }, row) => (
          <LogRow
            key={fact.entry.id}
            fact={fact}
            protocol={file.protocol}
            columns={columns}
            picked={first + row === place}
          />
        ))}
      </Box>
      <Choices choices={choices} columns={columns} most={most} />
    </Box>
  );
}

/** How many of how many, and what they were chosen by. */
function titleOf({ file, timeline: { group, search } }: Within, count: number, place: number): string {
  const all = rowsOf(file).length;
  const counted = count === all ? `${all} entries` : `${count} of ${all} entries`;
  const words = harmless(search);
  return [
    "timeline",
    count === 0 ? counted : `${place + 1} in ${counted}`,
    ...(group ? [group.name] : []),
    ...(words === "" ? [] : [`"${words}"`]),
  ].join(" · ");
}
