/** The entry line: what is being typed, what it asks, and what Enter would write. */
import { Box, Text } from "ink";
import { type HalfTyped, type Model, type Typing, typingIn } from "../console/model.ts";
import { asked, meaning } from "../console/open-line.ts";
import { harmless } from "../format/text.ts";
import { cutTo } from "./fit.ts";

export function EntryLine({ model, columns }: { model: Model; columns: number }) {
  const typing = typingIn(model.mode);
  const prompt = asked(model);
  if (typing === null) return <Quiet model={model} columns={columns} />;
  const room = Math.max(12, columns - prompt.label.length - 5);
  const means = meaning(model);
  return (
    <Box flexDirection="column">
      <Text wrap="truncate">
        <Text bold color="cyan">{`▸ ${prompt.label} `}</Text>
        <Typed typing={typing} columns={room} />
        {typing.text === "" ? <Text dimColor>{` ${cutTo(prompt.asks, Math.max(0, room - 3))}`}</Text> : null}
      </Text>
      <Text
        wrap="truncate"
        {...(means.kind === "fault" ? { color: "red" } : {})}
        dimColor={means.kind === "hint"}
      >
        {`  ${means.kind === "fault" ? "! " : ""}${cutTo(means.text, columns - 5)}`}
      </Text>
    </Box>
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

/** No line is open: what the console last said, or what can be brought back. */
function Quiet({ model, columns }: { model: Model; columns: number }) {
  const { notice, aside, mode } = model;
  const waiting = aside.at(-1);
  const kept = waiting ? `Esc brings back: ${harmless(halfTypedText(waiting))}` : "";
  const said = mode.name === "leave" || mode.name === "clock-early" ? asked(model).asks : (notice ?? kept);
  return (
    <Box flexDirection="column">
      <Text wrap="truncate" bold={mode.name === "leave"}>{`  ${cutTo(said, columns - 3)}`}</Text>
      <Text
        wrap="truncate"
        dimColor
      >{`  ${notice && kept && notice !== kept ? cutTo(kept, columns - 3) : ""}`}</Text>
    </Box>
  );
}
