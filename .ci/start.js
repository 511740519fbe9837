// Starts the console: bundles first when the bundle is missing or stale, then becomes the program.

import "./check-node.js";
import { spawnSync } from "node:child_process";
import { fileURLToPath, pathToFileURL } from "node:url";
import { bundlePath, isStale } from "./bundle.js";

if (await isStale()) {
  // The bundler works in a process of its own, so that the console does not carry its threads and memory,
  // and away from standard output, which belongs to the program.
  const bundler = fileURLToPath(new URL("bundle.js", import.meta.url));
  const { status } = spawnSync(process.execPath, [bundler], { stdio: ["ignore", 2, 2] });
  if (status !== 0) process.exit(1);
}

process.argv[1] = bundlePath;
// The program runs in this same process, so that the keyboard and the signals reach it directly.
await import(pathToFileURL(bundlePath).href);
