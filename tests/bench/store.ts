// What saving takes in the store alone, from an entry that is kept to the keeper's word that it is on the disk.

import { readFile } from "node:fs/promises";
import { logged } from "../../src/console/read-stroke.ts";
import type { CaseFile } from "../../src/record/case.ts";
import { keepCase } from "../../src/store/keeper.ts";
import { holdCase } from "../../src/store/open-case.ts";
import { bareWrite } from "./bare-write.ts";
import { type Times, timesOf } from "./table.ts";

const SAVES = 60;

/** Saves of the case at `path`, a stroke each, and bare writes of the same bytes between them. */
export async function savesInStore(path: string): Promise<{ saved: Times; bare: Times }> {
  const held = await holdCase(path);
  if (!held.ok) throw new Error(held.fault);
  let said = () => {};
  const { file, asRead, release } = held.value;
  const keeper = keepCase({
    ...{ path, file, asRead },
    onSaved: () => said(),
    onFault: (why) => {
      throw new Error(why);
    },
  });
  const saved: number[] = [];
  const bare: number[] = [];
  let now: CaseFile = file;
  // As in the console, where the text of the case is made ready while nobody types.
  await new Promise((resolve) => setTimeout(resolve, 1500));
  for (let save = 0; save < SAVES; save++) {
    const next = logged(now, "a480", { ms: Date.now(), offset: 0 });
    if (!next.ok) throw new Error(next.fault);
    now = next.value;
    const from = performance.now();
    await new Promise<void>((resolve) => {
      said = resolve;
      keeper.keep(now);
    });
    saved.push(performance.now() - from);
    bare.push(await bareWrite(path, await readFile(path)));
  }
  await keeper.close();
  await release();
  return { saved: timesOf(saved), bare: timesOf(bare) };
}
