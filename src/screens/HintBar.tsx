/** The last row: the strokes that the phase makes likely. */
import { memo } from "react";
import type { Stroke } from "../console/stroke.ts";
import { strokesOf } from "../console/strokes/table.ts";
import type { Phase } from "../figures/phase.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { fitting } from "./fit.ts";
import { type KeyName, KeyRow, keyWidth } from "./KeyRow.tsx";

/** As many strokes as fit whole; put right, find and help are always the last. */
function hintsFor(phase: Phase, protocol: Protocol, columns: number): readonly KeyName[] {
  const named = (strokes: readonly Stroke[]) => strokes.map(({ key, short }): KeyName => [key, short]);
  const usual = strokesOf(protocol).filter(
    ({ likely, opens }) => likely.includes(phase) && (opens === "line" || opens === "form"),
  );
  const always = named(
    strokesOf(protocol).filter(({ id }) => id === "put-right" || id === "find" || id === "help"),
  );
  const room = columns - always.reduce((sum, one) => sum + keyWidth(one), 0);
  return [...fitting(named(usual), room, keyWidth), ...always];
}

type Props = { readonly phase: Phase; readonly protocol: Protocol; readonly columns: number };

export const HintBar = memo(function HintBar({ phase, protocol, columns }: Props) {
  return <KeyRow keys={hintsFor(phase, protocol, columns)} />;
});
