/** What can hardly be meant, and what it would be in another unit: a warning in one sentence that blocks nothing. */
import { lookUp } from "../format/look-up.ts";
import { plain } from "../format/number.ts";
import { unitText } from "../format/unit.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { bloodVolumeIsPlausible, PLAUSIBLE_BLOOD_VOLUME } from "./blood-volume.ts";
import { bodyMassIndexOf } from "./body.ts";
import { shownUnit, toShown } from "./conversions.ts";
import { WINDOWS, type Window } from "./plausible-windows.ts";

/** What else is known: weight in kg, height in cm; the protocol for the units that are shown. */
type Around = {
  readonly weight?: number | undefined;
  readonly height?: number | undefined;
  readonly protocol?: Protocol | undefined;
};

/** A canonical value as a person reads it, with its unit; rounded to so many digits that count, if any. */
type Say = (canonical: number, digits?: number) => string;

/**
 * A sentence about a value that can hardly be meant, `null` about one that can. `field` is its name in the record, or
 * `bloodVolume` for mL of blood; the value is in the canonical unit.
 */
export function plausible(field: string, value: number, around: Around): string | null {
  if (field === "bloodVolume") return bloodVolumeWarning(value, around.weight);
  return implausible(field, value, sayIn(field, around.protocol)) ?? sizeWarning(field, value, around);
}

/** The same about a value by itself; `say` puts it in the unit that is shown. */
function implausible(field: string, value: number, say: Say): string | null {
  const window = lookUp(WINDOWS, field);
  if (!window || isWithin(window, value)) return null;
  const says = `${capital(window.name)} ${say(value)} is unlikely`;
  return withSlip(says, window, value, say, (meant) => isWithin(window, meant));
}

const isWithin = ({ low, high }: Window, value: number): boolean => value >= low && value <= high;

/** `Height 1.8 cm is unlikely: in metres it would be 180 cm.` */
function withSlip(
  says: string,
  { slips }: Window,
  value: number,
  say: Say,
  fits: (meant: number) => boolean,
) {
  // What was typed in the unit that is shown is not offered again in that unit.
  const shown = `in ${say(value).replace(/^\S+ /, "")}`;
  const slip = slips.find(({ read, meant }) => read !== shown && fits(meant(value)));
  return slip ? `${says}: ${slip.read} it would be ${say(slip.meant(value), DIGITS)}.` : `${says}: check it.`;
}

/** Of a value that nobody typed: as many as tell whether it is the one that was meant. */
const DIGITS = 3;

const rounded = (value: number, digits = DIGITS): number => Number(value.toPrecision(digits));
const capital = (text: string): string => text.replace(/^[a-z](?=[a-z]| )/, (letter) => letter.toUpperCase());

function sayIn(field: string, protocol: Protocol | undefined): Say {
  const canonical = lookUp(WINDOWS, field)?.unit ?? "";
  const unit = protocol ? shownUnit(field, canonical, protocol.shown) : canonical;
  return (value, digits = 12) =>
    `${plain(rounded(toShown(field, unit, value), digits))} ${unitText(unit)}`.trim();
}

/** Weight and height that can hardly belong to one body: `Weight 176 kg makes a body mass index of 64.6: …`. */
function sizeWarning(field: string, value: number, around: Around): string | null {
  const window = lookUp(WINDOWS, field);
  const index = massIndexBy(field, around);
  if (!window || !index || isOfABody(index(value))) return null;
  const say = sayIn(field, undefined);
  const says = `${capital(field)} ${say(value)} makes a body mass index of ${plain(rounded(index(value).value))}`;
  return withSlip(says, window, value, say, (meant) => isOfABody(index(meant)));
}

type MassIndex = { readonly value: number; readonly height: number };

/** The body mass index as a function of the field typed, where the other of the two is known. */
function massIndexBy(field: string, { weight, height }: Around): ((value: number) => MassIndex) | null {
  if (field === "weight" && height !== undefined)
    return (kg) => ({ value: bodyMassIndexOf(kg, height), height });
  if (field === "height" && weight !== undefined)
    return (cm) => ({ value: bodyMassIndexOf(weight, cm), height: cm });
  return null;
}

/** Indexes that are met with; below 120 cm nobody is as heavy for the height as a grown person can be. */
const isOfABody = ({ value, height }: MassIndex): boolean => value >= 7 && value <= (height < 120 ? 28 : 45);

function bloodVolumeWarning(ml: number, weight: number | undefined): string | null {
  if (weight === undefined || bloodVolumeIsPlausible(ml, weight)) return null;
  const { low, high } = PLAUSIBLE_BLOOD_VOLUME;
  return `Blood volume ${plain(rounded(ml))} mL is ${plain(rounded(ml / weight))} mL/kg: it is expected between ${low} and ${high} mL/kg.`;
}
