/** Entries about what goes in and comes out: arrest solution, volumes, levels, drugs. */
import * as z from "zod";
import { between, entryOf, initials, millilitres, name, someWords } from "./base.ts";
import { ROUTES } from "./routes.ts";

export const dose = entryOf("dose", {
  /** `start` and `end` bracket a dose; `so-far` is its running total; `whole` is a dose told afterwards. */
  state: z.enum(["start", "so-far", "end", "whole"]),
  ml: millilitres.optional(),
  route: z.enum(ROUTES).optional(),
  solution: name.optional(),
  pressure: between(-50, 600, "mm[Hg]").optional(),
  temperature: between(0, 42, "Cel").optional(),
}).refine((entry) => entry.state === "start" || entry.ml !== undefined, {
  error: "a dose says how many millilitres, unless it has only been started",
  path: ["ml"],
});

export const volume = entryOf("volume", {
  direction: z.enum(["in", "out", "returned"]),
  /** The fluid's id in the protocol; `urine` for urine, `pump-blood` for what is returned. */
  fluid: name,
  ml: millilitres.optional(),
  /** What the urine bag reads in all, where the person read the bag; the volume follows from it. */
  bagTotal: millilitres.optional(),
  unitNumber: someWords,
  checkedBy: initials.optional(),
}).refine((entry) => (entry.ml === undefined) !== (entry.bagTotal === undefined), {
  error: "a volume is either millilitres or the reading of the bag, one of the two",
});

export const level = entryOf("level", { ml: millilitres });

export const drug = entryOf("drug", {
  /** The drug's id in the protocol, or its name as typed; `heparin` and `protamine` are drugs. */
  name,
  amount: z.number().min(0).max(1_000_000),
  /** UCUM code; heparin is kept in [IU], protamine in mg. */
  unit: z.string().min(1).max(24),
  route: someWords,
  checkedBy: initials.optional(),
});
