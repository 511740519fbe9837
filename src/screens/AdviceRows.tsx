/** What the record advises, and above it, should it come to that, that entries are not on the disk or not copied. */
import { Box, Text } from "ink";
import type { Model } from "../console/model.ts";
import { advisoriesOf, type Shown } from "../figures/advisories/advisories.ts";
import type { Run } from "../figures/run.ts";
import { harmless } from "../format/text.ts";
import { cutTo } from "./fit.ts";
import { isTroubled, Trouble } from "./Trouble.tsx";

type Props = { readonly model: Model; readonly run: Run; readonly columns: number; readonly rows: number };

/** As many as fit, the first of them first; what does not fit is counted, never left unsaid. */
export function AdviceRows({ model, run, columns, rows }: Props) {
  const troubled = isTroubled(model);
  const room = Math.max(0, troubled ? rows - 1 : rows);
  const all = advisoriesOf(run);
  const shown = all.slice(0, room);
  return (
    <Box flexDirection="column" height={rows}>
      {troubled ? <Trouble model={model} columns={columns} /> : null}
      {shown.map((advice, place) => {
        const more = place === shown.length - 1 ? all.length - shown.length : 0;
        return <AdviceRow key={advice.id} advice={advice} number={place + 1} more={more} columns={columns} />;
      })}
    </Box>
  );
}

type RowProps = {
  readonly advice: Shown;
  readonly number: number;
  readonly more: number;
  readonly columns: number;
};

/** The number is what `!` answers it by. The source stands behind it where there is room for all of it. */
function AdviceRow({ advice: { text, source, acknowledged, priority }, number, more, columns }: RowProps) {
  const head = `${acknowledged ? " ✓" : " !"}${number} `;
  const tail = more > 0 ? `  +${more} more (!)` : "";
  const says = cutTo(harmless(text), columns - head.length - tail.length - 1);
  const cited = source ? ` (${harmless(source)})` : "";
  const fits = head.length + says.length + cited.length + tail.length < columns;
  const calm = acknowledged !== null || priority === "low";
  return (
    <Text wrap="truncate" dimColor={calm}>
      <Text bold={!calm} {...(calm ? {} : { color: "yellow" })}>
        {head}
      </Text>
      <Text bold={priority === "high" && !calm}>{says}</Text>
      {fits ? <Text dimColor>{cited}</Text> : null}
      <Text dimColor>{tail}</Text>
    </Text>
  );
}
