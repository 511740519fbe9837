// Writes the parts of README.md that come from the program itself: the console's picture and the table of strokes.

import { spawnSync } from "node:child_process";
import { readFile, writeFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { bundle, bundlePath, isStale } from "./bundle.js";

const readme = fileURLToPath(new URL("../README.md", import.meta.url));
const picture = fileURLToPath(new URL("../tests/screens/golden/run-advised.80x24.txt", import.meta.url));

if (await isStale()) await bundle();
const { stdout } = spawnSync(process.execPath, [bundlePath, "keys", "--markdown"], { encoding: "utf8" });
const parts = {
  strokes: stdout.trim(),
  picture: `\`\`\`\n${(await readFile(picture, "utf8")).trimEnd()}\n\`\`\``,
};

let text = await readFile(readme, "utf8");
for (const [name, part] of Object.entries(parts)) {
  const marked = new RegExp(`<!-- ${name} -->[^]*<!-- /${name} -->`);
  text = text.replace(marked, () => `<!-- ${name} -->\n${part}\n<!-- /${name} -->`);
}
await writeFile(readme, text);
