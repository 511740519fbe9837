/** The invented cases, for the demo, the sample files and the tests. */
import { adultCoronary } from "./adult-coronary.ts";
import { adultValve } from "./adult-valve.ts";
import { infantRepair } from "./infant-repair.ts";
import type { Script } from "./script.ts";

/** The one that shows most comes first. */
export const INVENTED: readonly Script[] = [adultValve, adultCoronary, infantRepair];
