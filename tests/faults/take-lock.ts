// Tries to take the lock of a case each time it is told to, and lets go when it is told to.

import { type Lock, lockCase } from "../../src/store/lock.ts";

let lock: Lock | null = null;

process.on("message", async (asked: { take: string } | "release") => {
  if (asked === "release") {
    await lock?.release();
    lock = null;
    process.send?.("released");
    return;
  }
  const outcome = await lockCase(asked.take);
  if (outcome.ok) lock = outcome.value;
  process.send?.(outcome.ok ? "held" : "refused");
});
process.on("disconnect", () => process.exit());
process.send?.("ready");
