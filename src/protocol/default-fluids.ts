/** The fluids that the shipped protocols know, with the letters typed for them. */
import { CITED } from "./citations.ts";
import { FROM_MEMORY } from "./decision.ts";
import type { FluidIn, FluidOut } from "./fluids.ts";

const donated = { sort: "blood", askUnitNumber: true, askSecondPerson: true } as const;

export const defaultFluidsIn: FluidIn[] = [
  { letter: "c", id: "crystalloid", name: "crystalloid", sort: "crystalloid" },
  { letter: "a", id: "albumin", name: "albumin", sort: "colloid" },
  { letter: "g", id: "gelatin", name: "gelatin", sort: "colloid" },
  {
    letter: "r",
    id: "red-cells",
    name: "red cells",
    haematocrit: { value: 60, source: CITED.redCells },
    ...donated,
  },
  {
    letter: "w",
    id: "whole-blood",
    name: "whole blood",
    haematocrit: { value: 35, source: CITED.wholeBlood },
    ...donated,
  },
  { letter: "p", id: "plasma", name: "plasma", haematocrit: { value: 0, source: FROM_MEMORY }, ...donated },
  {
    letter: "t",
    id: "platelets",
    name: "platelets",
    haematocrit: { value: 0, source: FROM_MEMORY },
    ...donated,
  },
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
