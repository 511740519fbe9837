// How the tests run: the program's own tests first, then those that drive real terminals and processes.

import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const results = process.env.PUMPSIDE_TEST_RESULTS;
const slow = [
  "tests/commands/**/*.test.{ts,tsx}",
  "tests/terminal/**/*.test.{ts,tsx}",
  "tests/faults/**/*.test.{ts,tsx}",
];

export default defineConfig({
  root: fileURLToPath(new URL("..", import.meta.url)),
  test: {
    pool: "forks",
    maxWorkers: 2,
    reporters: results === undefined ? ["dot"] : ["dot", "json"],
    ...(results === undefined ? {} : { outputFile: { json: results } }),
    projects: [
      {
        extends: true,
        test: {
          name: "program",
          include: ["tests/**/*.test.{ts,tsx}"],
          exclude: [...slow, "tests/bench/**"],
          testTimeout: 20_000,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          name: "terminal",
          include: slow,
          globalSetup: "tests/setup/bundle.ts",
          // A real terminal on a busy machine takes its time, and one at a time keeps the clocks honest.
          testTimeout: 60_000,
          hookTimeout: 60_000,
          fileParallelism: false,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
