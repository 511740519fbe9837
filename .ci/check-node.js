// Stops with one sentence where Node is too old. Plain JavaScript: an older Node must be able to read it.

export const oldestMajor = 22;

/**
 * What to tell a reader whose Node is too old, or undefined where it is new enough.
 * @param {string} version as in process.versions.node
 */
export function complaint(version) {
  if (Number.parseInt(version, 10) >= oldestMajor) return undefined;
  return (
    `pumpside needs Node ${oldestMajor} or later and this is ${version}: ` +
    "install a newer Node, or on 64-bit Linux run `npm ci` (with optional dependencies) and go through npm scripts."
  );
}

const sentence = complaint(process.versions.node);
if (sentence !== undefined) {
  process.stderr.write(`${sentence}\n`);
  process.exit(1);
}
