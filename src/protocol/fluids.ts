/** Fluids that go in, and volumes that come out, each with the letter typed for it. */
import * as z from "zod";
import { decision } from "./numbers.ts";
import { shownName, slug, volumeLetter } from "./words.ts";

export const fluidIn = z.looseObject({
  letter: volumeLetter,
  id: slug,
  name: shownName,
  sort: z.enum(["crystalloid", "colloid", "blood", "additive"]),
  haematocrit: decision("%", 0, 90, "haematocrit of a blood product, for the mixing figures").optional(),
  askUnitNumber: z.boolean().describe("whether the number of the unit of blood is asked for").optional(),
  askSecondPerson: z.boolean().describe("whether the initials of a second person are asked for").optional(),
});

export const fluidOut = z.looseObject({
  letter: volumeLetter,
  id: slug,
  name: shownName,
  fromPump: z.boolean().describe("whether it leaves the circuit, so that less is left in the pump"),
});

export type FluidIn = z.infer<typeof fluidIn>;
export type FluidOut = z.infer<typeof fluidOut>;
