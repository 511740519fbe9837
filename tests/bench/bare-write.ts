// The yardstick for saving: the same bytes written beside the case, forced to the disk and renamed into place.

import { open, rename } from "node:fs/promises";
import { dirname } from "node:path";

/** Milliseconds that it takes, the folder forced too, as a save does. */
export async function bareWrite(path: string, bytes: Uint8Array): Promise<number> {
  const from = performance.now();
  const file = await open(`${path}.bare`, "w");
  await file.writeFile(bytes);
  await file.sync();
  await file.close();
  await rename(`${path}.bare`, `${path}.bare-done`);
  const folder = await open(dirname(path), "r");
  await folder.sync();
  await folder.close();
  return performance.now() - from;
}
