/** Advisories about urine, and about what is left in the pump. */
import { plain } from "../../format/number.ts";
import { intervalsOf } from "../spans.ts";
import { urineOnBypass, urineRate } from "../urine-on-bypass.ts";
import { type Advisory, against, bypassOn, isBelow, lastNumber } from "./advisory.ts";

const urineLow: Advisory = {
  id: "urine-low",
  reads: ["watch.urinePerKgPerHour"],
  says(run) {
    const { value } = urineRate(run);
    const last = urineOnBypass(run.course).at(-1);
    const limit = run.course.protocol.watch.urinePerKgPerHour;
    if (!bypassOn(run) || value === null || !last || !isBelow(value, limit.value)) return null;
    return {
      text: `${against("Urine on bypass of", value, limit.value, "mL/kg/h", 1)}.`,
      source: limit.source,
      priority: "low",
      since: last.fact.at,
      after: lastNumber(last.fact),
    };
  },
};

/** Silent while a clamp or circulatory arrest is on: then bypass will be back. */
const leftInPump: Advisory = {
  id: "left-in-pump",
  reads: [],
  says({ course, pump }) {
    const bypass = intervalsOf(course.spans, "bypass");
    const off = bypass.at(-1)?.to;
    const { value } = pump.left;
    if (course.phase !== "after" || off == null || value === null || value <= 0) return null;
    const returned = course.volumes.some(
      ({ fact: { entry, at } }) => entry.direction === "returned" && at >= off,
    );
    if (returned) return null;
    return {
      text: `Bypass is off with ${plain(value)} mL left in the pump, and nothing has been returned since.`,
      priority: "low",
      since: off,
      after: 0,
    };
  },
};

export const volumeAdvisories: readonly Advisory[] = [urineLow, leftInPump];
