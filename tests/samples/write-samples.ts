// Writes the sample cases afresh: `npm run samples`.

import { INVENTED } from "../../src/commands/invented/index.ts";
import { fileName, sampleFolder, writeSample } from "./samples.ts";

for (const script of INVENTED) {
  await writeSample(script, sampleFolder);
  process.stdout.write(`sample-cases/${fileName(script)} written\n`);
}
