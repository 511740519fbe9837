// Where the signs of a text part, for the bundle: Node's own segmenter takes longer to make than the first screen to
// draw, and is made with the first text whose signs may join.

import { isOrdinary } from "./widths.js";

/** @type {Intl.Segmenter | undefined} */
let segmenter;

/** Stands for a segmenter of graphemes. */
export const graphemes = {
  /** @param {string} text */
  segment(text) {
    // Esc, as every control character, joins nothing either.
    if (!isOrdinary(text.replaceAll("\x1b", ""))) {
      segmenter ??= new Intl.Segmenter();
      return segmenter.segment(text);
    }
    /** @type {{ segment: string, index: number }[]} */
    const segments = [];
    for (let index = 0; index < text.length; index++) segments.push({ segment: text.charAt(index), index });
    return Object.assign(segments, { containing: (at = 0) => segments[at] });
  },
};
