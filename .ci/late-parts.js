// How the parts of the bundled program find each other: each is run with the first of its names that is used, so that a
// start runs what it needs and nothing else.

/**
 * @typedef {(id: string) => any} Require
 * @typedef {Record<string, any>} Exports
 * @typedef {(exports: Exports, require: Require, url: string, node: Require) => void} Run a module as the bundler writes it
 * @typedef {Record<string, Run>} Parts
 */

/**
 * Gives what any part exports by its id, and Node's own module where there is no such part.
 * @param {Parts} first
 * @param {() => Parts} rest asked for once a part is run that is not among the first
 * @param {Require} node
 * @param {string} url what `import.meta.url` is for all of them
 * @returns {Require}
 */
export function lateParts(first, rest, node, url) {
  /** @type {Map<string, any>} */
  const known = new Map();

  const part = (/** @type {string} */ id) => {
    if (!known.has(id)) known.set(id, id in first || id.startsWith("./") ? late(id) : node(id));
    return known.get(id);
  };

  const late = (/** @type {string} */ id) => {
    let isRun = false;
    // What the part puts there itself lies before what is behind it, and is found as fast as in any object.
    const behind = {
      get(/** @type {object} */ _nothing, /** @type {string} */ name) {
        if (isRun) return undefined;
        isRun = true;
        const run = first[id] ?? rest()[id];
        run?.(exports, part, url, node);
        return exports[name];
      },
    };
    /** @type {Exports} */
    const exports = Object.create(new Proxy({}, behind));
    return exports;
  };
  return part;
}
