/** The fluids that the shipped protocols know, with the letters typed for them. */
import { CITED } from "./citations.ts";
import { FROM_MEMORY } from "./decision.ts";
import type { FluidIn, FluidOut } from "./fluids.ts";

/** A blood product that comes in numbered units, with its haematocrit in percent. */
const donated = (letter: string, id: string, name: string, value: number, source: string): FluidIn => ({
  letter,
  id,
  name,
  sort: "blood",
  haematocrit: { value, source },
  askUnitNumber: true,
  askSecondPerson: true,
});

export const defaultFluidsIn: FluidIn[] = [
  { letter: "c", id: "crystalloid", name: "crystalloid", sort: "crystalloid" },
  { letter: "a", id: "albumin", name: "albumin", sort: "colloid" },
  { letter: "g", id: "gelatin", name: "gelatin", sort: "colloid" },
  donated("r", "red-cells", "red cells", 60, CITED.redCells),
  donated("w", "whole-blood", "whole blood", 35, CITED.wholeBlood),
  donated("p", "plasma", "plasma", 0, FROM_MEMORY),
  donated("t", "platelets", "platelets", 0, FROM_MEMORY),
  {
    letter: "s",
    id: "salvaged-cells",
    name: "salvaged cells",
    sort: "blood",
    haematocrit: { value: 55, source: FROM_MEMORY },
  },
  { letter: "b", id: "sodium-bicarbonate", name: "sodium bicarbonate", sort: "additive" },
  { letter: "m", id: "mannitol", name: "mannitol", sort: "additive" },
  { letter: "f", id: "prime", name: "prime", sort: "crystalloid" },
];

export const defaultFluidsOut: FluidOut[] = [
  { letter: "u", id: "ultrafiltrate", name: "ultrafiltrate", fromPump: true },
  { letter: "s", id: "shed-blood", name: "shed blood", fromPump: false },
  { letter: "d", id: "discarded", name: "discarded from the pump", fromPump: true },
  { letter: "c", id: "to-cell-salvage", name: "to cell salvage", fromPump: true },
];
