/** An invented adult: three coronary grafts, and back on bypass to do one of them again. */
import { adultProtocol } from "../../protocol/adult.ts";
import { coronaryBeforeBypass } from "./adult-coronary-before.ts";
import { coronaryFirstRun } from "./adult-coronary-first-run.ts";
import { coronarySecondRun } from "./adult-coronary-second-run.ts";
import type { Script } from "./script.ts";

export const adultCoronary: Script = {
  id: "adult-coronary",
  label: "Adult coronary (invented)",
  protocol: adultProtocol,
  operator: "TJ",
  place: "theatre 1",
  start: { ms: Date.UTC(2026, 2, 11, 11, 40), offset: 60 },
  steps: [...coronaryBeforeBypass, ...coronaryFirstRun, ...coronarySecondRun],
};
