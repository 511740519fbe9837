/** The protocols that come with the program. */
import { adultProtocol } from "./adult.ts";
import { paediatricProtocol } from "./paediatric.ts";
import type { Protocol } from "./protocol.ts";

/** The usual one first. */
export const SHIPPED: readonly Protocol[] = [adultProtocol, paediatricProtocol];

/**
 * Whether a value from anywhere is, to the letter, a protocol that comes with the program: such a one is sound, and need
 * not be looked into. One with the same settings in another order has to be.
 */
export function isShipped(json: unknown): boolean {
  const text = JSON.stringify(json);
  texts ??= SHIPPED.map((protocol) => JSON.stringify(protocol));
  return texts.includes(text);
}

let texts: string[] | undefined;
