// The yardstick for saving: the same bytes written beside the case, forced to the disk and renamed into place.

import { open, rename } from "node:fs/promises";
import { dirname } from "node:path";

/** One place for the bytes of all rounds: new ones each time would have V8 collect what the measured program left. */
let room = Buffer.alloc(0);

/** Milliseconds that it takes with the bytes of the file at `path`, the folder forced too, as a save does. */
export async function bareWrite(path: string): Promise<number> {
  const bytes = await bytesAt(path);
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

async function bytesAt(path: string): Promise<Uint8Array> {
  const file = await open(path, "r");
  const { size } = await file.stat();
  if (size > room.length) room = Buffer.alloc(2 * size);
  await file.read(room, 0, size, 0);
  await file.close();
  return room.subarray(0, size);
}
