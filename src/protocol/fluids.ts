/** Fluids that go in, and volumes that come out, each with the letter typed for it. */
import * as z from "zod";
import { decision } from "./decision.ts";
import { shownName, slug, volumeLetter } from "./words.ts";

export const fluidIn = z.looseObject({
  letter: volumeLetter,
  id: slug,
  name: shownName,
  sort: z.enum(["crystalloid", "colloid", "blood", "additive"]),
  /** Haematocrit of a blood product, for the mixing figures. */
  haematocrit: decision("%", 0, 90).optional(),
  /** Whether a unit number and a second person's initials are asked for. */
  askUnitNumber: z.boolean().optional(),
  askSecondPerson: z.boolean().optional(),
});

export const fluidOut = z.looseObject({
  letter: volumeLetter,
  id: slug,
  name: shownName,
  /** Whether it is taken out of the circuit, so that less is left in the pump. */
  fromPump: z.boolean(),
});

export type FluidIn = z.infer<typeof fluidIn>;
export type FluidOut = z.infer<typeof fluidOut>;
