/** The entry line: what is being typed, what it asks, and what Enter would write. */
import { Box, Text } from "ink";
import { type HalfTyped, type Model, type Typing, typingIn } from "../console/model.ts";
import { asked, type Meaning, meaning } from "../console/open-line.ts";
import { harmless } from "../format/text.ts";
import { cutTo } from "./fit.ts";
import { wrapped } from "./wrapped.ts";

/** What stands under the line, or in its place while none is open: rows of one kind. */
export type Said = { readonly kind: Meaning["kind"]; readonly rows: readonly string[] };

/** More than this is never said at once. */
const MOST_ROWS = 3;

/** Sentences wrap, so that the end of a refusal, which says what to do, is read as well. */
export function saidBy(model: Model, columns: number): Said {
  const width = columns - 3;
  const sentences = (texts: readonly string[]) =>
    texts.flatMap((text) => wrapped(text, width)).slice(0, MOST_ROWS);
  if (typingIn(model.mode) === null) return { kind: "writes", rows: sentences(quietly(model)) };
  const { kind, text } = meaning(model);
  if (model.mode.name === "find") return { kind, rows: [cutTo(text, width)] };
  return { kind, rows: sentences([kind === "fault" ? `! ${text}` : text]) };
}

/** The rows that the line and what is said take. */
export const entryRows = ({ mode }: Model, { rows }: Said): number =>
  typingIn(mode) === null ? Math.max(2, rows.length) : 1 + rows.length;

type Props = { readonly model: Model; readonly said: Said; readonly columns: number };

export function EntryLine({ model, said, columns }: Props) {
  const typing = typingIn(model.mode);
  return (
    <Box flexDirection="column" height={entryRows(model, said)}>
      {typing === null ? null : <Line model={model} typing={typing} columns={columns} />}
      {said.rows.map((row) => (
        <Text
          key={row}
          wrap="truncate"
          {...(said.kind === "fault" ? { color: "red" } : {})}
          dimColor={said.kind === "hint"}
          bold={model.mode.name === "leave"}
        >
          {`  ${cutTo(row, columns - 3)}`}
        </Text>
      ))}
    </Box>
  );
}

function Line({ model, typing, columns }: { model: Model; typing: Typing; columns: number }) {
  const { label, asks } = asked(model);
  const room = Math.max(12, columns - label.length - 5);
  return (
    <Text wrap="truncate">
      <Text bold color="cyan">{`▸ ${label} `}</Text>
      <Typed typing={typing} columns={room} />
      {typing.text === "" ? <Text dimColor>{` ${cutTo(asks, Math.max(0, room - 3))}`}</Text> : null}
    </Text>
  );
}

/** What waits to be brought back, short. */
function halfTypedText(half: HalfTyped): string {
  if (half.name === "form") return `${half.stroke} ${Object.values(half.texts).filter(Boolean).join(" ")}`;
  return `${half.name === "line" ? half.stroke : "z"} ${half.text}`;
}

/** The text with a block where the cursor is; a text that is too long shows its end. */
function Typed({ typing, columns }: { typing: Typing; columns: number }) {
  const points = [...typing.text].map((point) => harmless(point) || " ");
  const first = Math.max(0, typing.cursor - columns + 2);
  const end = first + columns - 1;
  return (
    <Text>
      {points.slice(first, typing.cursor).join("")}
      <Text inverse>{points[typing.cursor] ?? " "}</Text>
      {points.slice(typing.cursor + 1, end).join("")}
    </Text>
  );
}

/** No line is open: what the console asks or last said, and what can be brought back. */
function quietly(model: Model): string[] {
  const { notice, aside, mode } = model;
  if (mode.name === "leave" || mode.name === "clock-early") return [asked(model).asks];
  const waiting = aside.at(-1);
  const kept = waiting ? `Esc brings back: ${harmless(halfTypedText(waiting))}` : null;
  return [notice, kept].filter((text) => text !== null);
}
