/** A field for a measured quantity: typed in the unit the protocol shows, kept in the canonical one. */

import { shownUnit, toCanonical, toShown } from "../../figures/conversions.ts";
import { plausible } from "../../figures/plausibility.ts";
import { fixed } from "../../format/number.ts";
import { andThen, type Outcome, refused, taken } from "../../format/outcome.ts";
import { unitText } from "../../format/unit.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import type { Quantity } from "../../record/quantities.ts";
import type { Field } from "../form.ts";
import { AS_SHOWN, readNumber } from "./fields.ts";

/** Beyond these, in the canonical unit, a value cannot be meant at all. */
type Bounds = { readonly lowest: number; readonly highest: number };

/** The field; `last` is the value last recorded, in the canonical unit. */
export function quantityField(
  name: string,
  quantity: Quantity,
  protocol: Protocol,
  last: number | undefined,
  bounds?: Bounds,
): Field {
  const unit = shownUnit(name, quantity.unit, protocol.shown);
  const decimals = unit === quantity.unit ? quantity.decimals : quantity.decimals + 1;
  const shown = (value: number) => fixed(toShown(name, unit, value), decimals);
  const within = (value: number): Outcome<number> =>
    bounds === undefined || (value >= bounds.lowest && value <= bounds.highest)
      ? taken(value)
      : refused(
          [
            `${quantity.short} lies between ${shown(bounds.lowest)} and ${shown(bounds.highest)} ${unitText(unit)}.`,
            plausible(name, value, { protocol }),
          ]
            .filter(Boolean)
            .join(" "),
        );
  return {
    id: quantity.short,
    label: quantity.short,
    unit: unitText(unit),
    standing: last === undefined ? "" : shown(last),
    read: (text) =>
      text === AS_SHOWN && last !== undefined
        ? taken(last)
        : andThen(readNumber(text, last === undefined ? "4.5" : shown(last)), (value) =>
            within(toCanonical(name, unit, value)),
          ),
    warn: (value) => plausible(name, Number(value), { protocol }),
  };
}
