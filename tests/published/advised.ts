/** What the record advises upon one set of readings, or one gas, taken an hour into bypass. */
import { advisoriesOf } from "../../src/figures/advisories/advisories.ts";
import type { EntryOf } from "../../src/record/entry.ts";
import { given, runAt, typed } from "../helpers/typed-case.ts";

const onBypass = typed(["09:00 b"]);

/** Whether an advisory with such an id stands after these readings. */
export const advises = (values: EntryOf<"readings">["values"], id: RegExp): boolean =>
  stands(given(onBypass, { kind: "readings", values }, "10:00"), id);

/** Whether one stands after this arterial gas. */
export const advisesOnGas = (values: EntryOf<"gas">["values"], id: RegExp): boolean =>
  stands(given(onBypass, { kind: "gas", sample: "arterial", values }, "10:00"), id);

const stands = (file: typeof onBypass, id: RegExp): boolean =>
  advisoriesOf(runAt(file, "10:00")).some((advisory) => id.test(advisory.id));
