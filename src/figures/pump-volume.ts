/** What is left in the pump, and the net to the patient that follows from it. */
import { plain } from "../format/number.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { type Fact, lastOf } from "../record/standing.ts";
import { type Figure, known, missing } from "./figure.ts";
import type { Volume } from "./volumes.ts";

export type PumpVolume = {
  readonly left: Figure;
  /** Milliseconds since the level it rests on was read. */
  readonly age: number | null;
};

/**
 * Millilitres in the pump. On bypass: the last level. After bypass: the last level + in − returned − what was taken
 * out of the circuit since that level. (Ultrafiltrate and volume sent to salvage leave the pump, so they count here.)
 */
export function leftInPump(
  facts: readonly Fact[],
  volumes: readonly Volume[],
  protocol: Protocol,
  afterBypass: boolean,
  now: number,
): PumpVolume {
  const level = lastOf(facts, "level");
  if (!level) return { left: missing("mL", "no level recorded"), age: null };
  const age = Math.max(0, now - level.at);
  const start = level.entry.ml;
  if (!afterBypass) return { left: known(start, "mL", "last level"), age };
  const since = volumes.filter(({ fact }) => isAfter(fact, level));
  const fromPump = new Set(protocol.fluidsOut.filter((fluid) => fluid.fromPump).map(({ id }) => id));
  const add = (test: (volume: Volume) => boolean) => since.filter(test).reduce((sum, { ml }) => sum + ml, 0);
  const into = add(({ fact }) => fact.entry.direction === "in");
  const returned = add(({ fact }) => fact.entry.direction === "returned");
  const taken = add(({ fact }) => fact.entry.direction === "out" && fromPump.has(fact.entry.fluid));
  const working = `level ${plain(start)} + in ${plain(into)} − returned ${plain(returned)} − out of the pump ${plain(taken)}`;
  return { left: known(start + into - returned - taken, "mL", working), age };
}

const isAfter = (fact: Fact, other: Fact) =>
  fact.at > other.at || (fact.at === other.at && fact.entry.seq > other.entry.seq);

/** Net to the patient after bypass: in − out − what is left in the pump. */
export function netToPatient(net: Figure, left: Figure): Figure {
  if (net.value === null) return net;
  if (left.value === null) return left;
  return known(
    net.value - left.value,
    "mL",
    `net ${plain(net.value)} − left in the pump ${plain(left.value)}`,
  );
}
