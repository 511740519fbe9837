/** The protocols that come with the program. */
import { adultProtocol } from "./adult.ts";
import { paediatricProtocol } from "./paediatric.ts";
import type { Protocol } from "./protocol.ts";

/** The usual one first. */
export const SHIPPED: readonly Protocol[] = [adultProtocol, paediatricProtocol];
