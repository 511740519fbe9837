// A console that things go wrong around, and what it kept.

import { expect } from "vitest";
import { chainFault } from "../../src/store/chain-fault.ts";
import { readCaseFile } from "../../src/store/read-case-file.ts";
import { enter, newCase, PATIENCE, saved } from "../terminal/driving.ts";
import { type ConsoleOptions, type RunningConsole, startConsole } from "../terminal/harness.ts";

/** A console that runs a new case in the folder. */
export async function runningIn(dir: string, options: Partial<ConsoleOptions> = {}) {
  const path = await newCase(dir, "fault");
  const console = startConsole({ dir, args: ["run", path], ...options });
  await console.waitFor(saved(1), PATIENCE);
  return { console, path };
}

/** The kinds of the entries on the disk, whose chain holds. */
export async function kindsAt(path: string): Promise<string[]> {
  const read = await readCaseFile(path);
  if (!read.ok) throw new Error(read.fault);
  expect(chainFault(read.value.file)).toBeNull();
  return read.value.file.entries.map(({ kind }) => kind);
}

/** Leaves a console whose case is saved. */
export const leave = async (console: RunningConsole) => {
  await console.type("q");
  await console.waitFor("Enter leaves", PATIENCE);
  console.raw(enter);
  return console.exited;
};
