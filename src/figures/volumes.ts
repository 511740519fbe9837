/** Volumes, each with the millilitres that follow from it where the bag was read instead. */
import type { EntryOf } from "../record/entry.ts";
import { type Fact, ofKind } from "../record/standing.ts";

export type Volume = { readonly fact: Fact<EntryOf<"volume">>; readonly ml: number };

/**
 * Every volume in the order of happening. Where the urine bag was read, the volume is what the bag gained since the
 * urine recorded before it: the reading is the fact, so putting an earlier entry right does not move the total.
 */
export function readVolumes(facts: readonly Fact[]): Volume[] {
  let urine = 0;
  return ofKind(facts, "volume").map((fact) => {
    const { fluid, ml, bagTotal } = fact.entry;
    const volume = ml ?? (bagTotal ?? 0) - urine;
    if (fluid === "urine") urine += volume;
    return volumeOf(fact, volume);
  });
}

const known = new WeakMap<Volume["fact"], Volume>();

/** Of an entry whose millilitres stay the same there is one volume, however often the list grows. */
function volumeOf(fact: Volume["fact"], ml: number): Volume {
  const before = known.get(fact);
  if (before?.ml === ml) return before;
  const volume = { fact, ml };
  known.set(fact, volume);
  return volume;
}

/** Millilitres of the volumes that pass a test; `null` when there is none, for unknown is not zero. */
export function sumOf(
  volumes: readonly Volume[],
  test: (entry: EntryOf<"volume">) => boolean,
): number | null {
  const those = volumes.filter(({ fact }) => test(fact.entry));
  return those.length === 0 ? null : those.reduce((sum, { ml }) => sum + ml, 0);
}
