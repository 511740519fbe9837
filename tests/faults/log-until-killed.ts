// Holds the case it is given and logs into it without end, telling each sequence number once it is on the disk.

import { writeSync } from "node:fs";
import { setImmediate as turn } from "node:timers/promises";
import { keepCase } from "../../src/store/keeper.ts";
import { holdCase } from "../../src/store/open-case.ts";
import { withNotes } from "../store/notes.ts";

const held = await holdCase(process.argv[2] as string);
if (!held.ok) throw new Error(held.fault);

let { file } = held.value;
const keeper = keepCase({
  ...held.value,
  onSaved: (seq) => writeSync(1, `saved ${seq}\n`),
  onFault: (words) => writeSync(1, `fault ${words}\n`),
});
writeSync(1, `open ${file.entries.length}\n`);

for (;;) {
  file = withNotes(file, 1);
  keeper.keep(file);
  await turn();
  // As a person does who types faster than the disk: now and then everything waits for a save.
  if (file.entries.length % 3 === 0) await keeper.settle();
}
