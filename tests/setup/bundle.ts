// Makes sure that tests of the whole program meet today's bundle.

import { bundle, isStale } from "../../.ci/bundle.js";

export default async function setup(): Promise<void> {
  if (await isStale()) await bundle();
}
