/** An open form: its fields in columns, each with what stands while it is empty; the one being typed has the cursor. */
import { Box, Text } from "ink";
import { type Field, type Texts, TIME_AND_NOTE } from "../console/form.ts";
import type { FormMode } from "../console/model.ts";
import { fieldDoubt, valuesSoFar } from "../console/read-form.ts";
import { harmless } from "../format/text.ts";
import { column } from "./fit.ts";

type Cell = { readonly id: string; readonly label: string; readonly standing: string };

const LAST: Cell = { id: TIME_AND_NOTE, label: "time, note", standing: "" };

/** The cells of a form: its fields, and the one for time and note. */
export const cellsOf = (fields: readonly Field[]): readonly Cell[] => [
  ...fields.map(({ id, label, unit, standing }) => ({
    id,
    label: unit === "" ? label : `${label} ${unit}`,
    standing,
  })),
  LAST,
];

/** How wide a field is: names of more than a word or two take more room, and fewer of them are in view. */
export const fieldWidth = (fields: readonly Field[]): number =>
  fields.some(({ label }) => label.length > LONG_LABEL) ? 40 : 26;

const LONG_LABEL = 14;

type Props = {
  readonly fields: readonly Field[];
  readonly mode: FormMode;
  readonly columns: number;
  readonly rows: number;
  readonly wide: number;
};

/** Fields run down the columns, a sign behind what is hard to believe; where there are more than fit, the column of the present one comes into view. */
export function FormPanel({ fields, mode, columns, rows, wide }: Props) {
  const cells = cellsOf(fields);
  const soFar = valuesSoFar(fields, mode.texts);
  const doubted = new Set(
    fields.filter((field) => fieldDoubt(field, mode.texts, soFar) !== null).map(({ id }) => id),
  );
  const across = Math.max(1, Math.floor(columns / wide));
  const down = Math.max(1, Math.min(rows, Math.ceil(cells.length / across)));
  const place = Math.max(
    0,
    cells.findIndex(({ id }) => id === mode.field),
  );
  const firstColumn = Math.max(0, Math.floor(place / down) - across + 1);
  const lines = Array.from({ length: down }, (_, row) =>
    Array.from({ length: across }, (_column, nth) => cells[(firstColumn + nth) * down + row]).filter(
      (cell) => cell !== undefined,
    ),
  );
  return (
    <Box flexDirection="column" height={rows}>
      {lines.map((line) => (
        <Text key={line[0]?.id} wrap="truncate">
          {line.map((cell) => (
            <FieldCell
              key={cell.id}
              cell={cell}
              texts={mode.texts}
              current={cell.id === mode.field}
              doubted={doubted.has(cell.id)}
              wide={Math.min(wide, columns)}
            />
          ))}
        </Text>
      ))}
    </Box>
  );
}

function FieldCell({
  cell,
  texts,
  current,
  doubted,
  wide,
}: {
  cell: Cell;
  texts: Texts;
  current: boolean;
  doubted: boolean;
  wide: number;
}) {
  const labelWidth = Math.floor(wide * 0.48);
  const room = wide - labelWidth - 2;
  const text = harmless(texts[cell.id] ?? "");
  return (
    <Text>
      <Text bold={current} {...(current ? { color: "cyan" } : {})}>
        {current ? "▸" : " "}
        {column(cell.label, labelWidth)}
      </Text>
      {text === "" && !current ? (
        <Text dimColor>{column(cell.standing === "" ? "·" : `(${cell.standing})`, room)}</Text>
      ) : (
        <Text bold inverse={current}>
          {column(current && text === "" ? " " : text, room)}
        </Text>
      )}
      <Text bold>{doubted && !current ? "!" : " "}</Text>
    </Text>
  );
}
