/** A unit's protocol: everything it decides, in one documented file that a case carries along. */
import type * as z from "zod";
import type { protocolSchema } from "./protocol-schema.ts";

export const PROTOCOL_FORMAT = "pumpside-protocol";
export const PROTOCOL_VERSION = 1;

/** Of the protocols that come with the program, as `shipped.ts` has them. */
export const SHIPPED_NAMES = ["adult", "paediatric"] as const;

export type Protocol = z.infer<typeof protocolSchema>;

/** The solution with that name, else the usual one. */
export const solutionOf = (protocol: Protocol, id?: string) =>
  protocol.solutions.find((one) => one.id === id) ??
  protocol.solutions.find((one) => one.id === protocol.usualSolution);

/** The part of a solution that is crystalloid: 0.2 for four of blood to one of crystalloid, 0.8 for one to four. */
export function crystalloidPart({ blood, crystalloid }: { blood: number; crystalloid: number }): number {
  const parts = blood + crystalloid;
  return parts === 0 ? 0 : crystalloid / parts;
}
