/** The keys a protocol gives to strokes, held against the stroke table. */
import type { Fault } from "../../protocol/fault.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import { STROKES, strokesOf } from "./table.ts";

/** Every key that names no stroke, cannot be typed as one, or is that of another stroke. */
export function ownKeyFaults(protocol: Protocol): readonly Fault[] {
  const strokes = strokesOf(protocol);
  return Object.entries(protocol.keys ?? {}).flatMap(([id, key]): Fault[] => {
    const place = `keys · ${id}`;
    if (!STROKES.some((stroke) => stroke.id === id)) {
      return [
        {
          place,
          says: "there is no stroke of that name",
          suggestion: `take one of ${STROKES.map((stroke) => stroke.id).join(", ")}`,
        },
      ];
    }
    const other = strokes.find((stroke) => stroke.key === key && stroke.id !== id);
    return other
      ? [{ place, says: `"${key}" is the key of ${other.name} already`, suggestion: "choose another key" }]
      : [];
  });
}
