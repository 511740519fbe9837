/** An invented adult: an aortic valve replaced, with root and ostial doses of 4:1 blood. */
import { adultProtocol } from "../../protocol/adult.ts";
import { valveAfterClampOff } from "./adult-valve-after.ts";
import { valveUntilClampOff } from "./adult-valve-arrest.ts";
import { valveBeforeBypass } from "./adult-valve-before.ts";
import type { Script } from "./script.ts";

export const adultValve: Script = {
  id: "adult-valve",
  label: "Adult valve (invented)",
  protocol: adultProtocol,
  operator: "KM",
  place: "theatre 2",
  start: { ms: Date.UTC(2026, 2, 4, 6, 20), offset: 60 },
  steps: [...valveBeforeBypass, ...valveUntilClampOff, ...valveAfterClampOff],
};
