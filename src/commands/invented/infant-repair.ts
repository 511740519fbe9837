/** An invented infant: an arch joined under circulatory arrest and cerebral perfusion, and filtered afterwards. */
import { paediatricProtocol } from "../../protocol/paediatric.ts";
import { infantAfterBypass } from "./infant-repair-after.ts";
import { infantBeforeBypass } from "./infant-repair-before.ts";
import { infantOnBypass } from "./infant-repair-on-bypass.ts";
import type { Script } from "./script.ts";

export const infantRepair: Script = {
  id: "infant-repair",
  label: "Infant repair (invented)",
  protocol: paediatricProtocol,
  operator: "SB",
  place: "theatre 4",
  start: { ms: Date.UTC(2026, 2, 18, 7, 0), offset: 60 },
  steps: [...infantBeforeBypass, ...infantOnBypass, ...infantAfterBypass],
};
