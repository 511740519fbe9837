/** The last row: the strokes that the phase makes likely. */
import { Text } from "ink";
import { memo } from "react";
import { type STROKES, strokesOf } from "../console/strokes/table.ts";
import type { Phase } from "../figures/phase.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { fitting } from "./fit.ts";

/** As many strokes as fit whole; put right, find and help are always the last. */
export function hintsFor(
  phase: Phase,
  protocol: Protocol,
  columns: number,
): readonly (readonly [string, string])[] {
  const usual = strokesOf(protocol).filter(
    ({ likely, opens }) => likely.includes(phase) && (opens === "line" || opens === "form"),
  );
  const always = strokesOf(protocol).filter(({ id }) => id === "put-right" || id === "find" || id === "help");
  const width = ({ key, short }: (typeof STROKES)[number]) => key.length + short.length + 3;
  const room = columns - always.reduce((sum, stroke) => sum + width(stroke), 0);
  return [...fitting(usual, room, width), ...always].map(({ key, short }) => [key, short] as const);
}

type Props = { readonly phase: Phase; readonly protocol: Protocol; readonly columns: number };

export const HintBar = memo(function HintBar({ phase, protocol, columns }: Props) {
  return (
    <Text wrap="truncate">
      {hintsFor(phase, protocol, columns).map(([key, short]) => (
        <Text key={key}>
          {" "}
          <Text bold>{key}</Text>
          <Text dimColor>{` ${short} `}</Text>
        </Text>
      ))}
    </Text>
  );
});
