/** What was measured in the units that the protocol shows, with as many decimals as those deserve. */
import { shownUnit, toShown } from "../figures/conversions.ts";
import { fixed, plain, UNKNOWN } from "../format/number.ts";
import { unitText } from "../format/unit.ts";
import type { ShownUnits } from "../protocol/units.ts";
import type { Quantity } from "../record/quantities.ts";

export type ShownQuantity = {
  readonly name: string;
  /** As people read it; empty where there is none. */
  readonly unit: string;
  /** A value of the record as it is shown, without its unit. */
  readonly write: (value: number | null) => string;
};

/** `key` is the quantity's name in the record. */
export function shownQuantity(key: string, quantity: Quantity, shown: ShownUnits): ShownQuantity {
  const unit = shownUnit(key, quantity.unit, shown);
  const decimals = Math.max(0, quantity.decimals - Math.round(Math.log10(toShown(key, unit, 1))));
  return {
    name: quantity.name,
    unit: unitText(unit),
    write: (value) => fixed(value === null ? null : toShown(key, unit, value), decimals),
  };
}

/** A value that somebody told, with its UCUM unit as people read it; a dash where nobody did. */
export const amountOf = (value: number | undefined, unit: string): string =>
  value === undefined ? UNKNOWN : `${plain(value)} ${unitText(unit)}`;

/** `pump flow (L/min)` */
export const withUnit = ({ name, unit }: Pick<ShownQuantity, "name" | "unit">): string =>
  unit === "" ? name : `${name} (${unit})`;
