// How a console ends, by the person, by a signal or by another console in the way: nothing typed is lost, and the
// terminal is as it was before.

import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { caseAt, caseFolder, enter, lineOpen, newCase, PATIENCE, saved } from "./driving.ts";
import { keys, type RunningConsole, startConsole, stopConsoles } from "./harness.ts";

let folder: Awaited<ReturnType<typeof caseFolder>>;
beforeAll(async () => {
  folder = await caseFolder();
});
afterEach(stopConsoles);
afterAll(() => folder.remove());

/** The modes of the terminal that a full-screen program changes. */
const modesOf = ({ terminal, cursorShown }: RunningConsole) => ({
  screen: terminal.buffer.active.type,
  paste: terminal.modes.bracketedPasteMode,
  cursor: cursorShown(),
});

const AS_IT_WAS = { screen: "normal", paste: false, cursor: true };
const FULL_SCREEN = { screen: "alternate", paste: true, cursor: false };

async function running(label: string): Promise<{ console: RunningConsole; path: string }> {
  const path = await newCase(folder.dir, label);
  const console = startConsole({ dir: folder.dir, args: ["run", label] });
  await console.waitFor(saved(1), PATIENCE);
  return { console, path };
}

describe("leaving by q and Enter", () => {
  test("leads back to the list, from where the case resumes", async () => {
    const path = await newCase(folder.dir, "resumed");
    const console = startConsole({ dir: folder.dir });
    await console.waitFor("resumed", PATIENCE);
    console.raw(enter);
    await console.waitFor(saved(1), PATIENCE);
    await console.type(`b${enter}`);
    await console.waitFor(saved(2), PATIENCE);
    await console.type("q");
    await console.waitFor("Enter leaves", PATIENCE);
    console.raw(enter);
    await console.waitFor("2 entries  resumed", PATIENCE);
    console.raw(enter);
    await console.waitFor(
      (screen) => saved(2)(screen) && screen[0]?.includes("ON BYPASS") === true,
      PATIENCE,
    );
    await console.type(`a512${enter}`);
    await console.waitFor(saved(3), PATIENCE);
    expect((await caseAt(path)).entries.map(({ kind }) => kind)).toEqual(["opened", "span", "act"]);
  });

  test("puts the terminal back as it was", async () => {
    const { console } = await running("left by q");
    await console.type("q");
    await console.waitFor("Enter leaves", PATIENCE);
    expect(modesOf(console)).toEqual(FULL_SCREEN);
    console.raw(enter);
    expect(await console.exited).toEqual({ exitCode: 0, signal: undefined });
    expect(modesOf(console)).toEqual(AS_IT_WAS);
  });

  test("is asked about by Ctrl-C as well, and Esc stays", async () => {
    const { console, path } = await running("left by Ctrl-C");
    await console.type("h280");
    await console.waitFor(lineOpen("h heparin 280"), PATIENCE);
    console.raw(keys.interrupt);
    await console.waitFor("Enter leaves", PATIENCE);
    console.raw(keys.escape);
    await console.waitFor("Esc brings back: h 280", PATIENCE);
    console.raw(keys.escape);
    await console.waitFor(lineOpen("h heparin 280"), PATIENCE);
    await console.type(`00${enter}`);
    await console.waitFor(saved(2), PATIENCE);
    expect((await caseAt(path)).entries.at(-1)).toMatchObject({ name: "heparin", amount: 28_000 });
  });
});

describe.each(["SIGTERM", "SIGHUP"])("%s while a person types", (signal) => {
  test("keeps all that was written, gives the half-typed line back, and puts the terminal back", async () => {
    const { console, path } = await running(`ended by ${signal}`);
    await console.type(`h28000${enter}a512${enter}b${enter}v25`);
    await console.waitFor(lineOpen("v volume in 25"), PATIENCE);
    console.kill(signal);
    expect(await console.exited).toEqual({ exitCode: 0, signal: undefined });
    expect(modesOf(console)).toEqual(AS_IT_WAS);
    expect((await caseAt(path)).entries.map(({ typed }) => typed)).toEqual(["", "h28000", "a512", "b"]);

    const again = startConsole({ dir: folder.dir, args: ["run", path] });
    await again.waitFor(saved(4), PATIENCE);
    await again.waitFor("Esc brings back: v 25", PATIENCE);
  });

  test("keeps what was entered in the same moment", async () => {
    const { console, path } = await running(`ended at once by ${signal}`);
    console.raw("h28000\ra512\rb\r");
    await console.waitFor("ON BYPASS", PATIENCE);
    console.kill(signal);
    await console.exited;
    expect((await caseAt(path)).entries.map(({ typed }) => typed)).toEqual(["", "h28000", "a512", "b"]);
  });
});

describe("a second console on the same case", () => {
  test("is refused with one sentence where it is named, and the first goes on", async () => {
    const { console, path } = await running("held");
    const second = startConsole({ dir: folder.dir, args: ["run", "held"] });
    expect(await second.exited).toEqual({ exitCode: 1, signal: undefined });
    const said = second.screen().join(" ").replaceAll(/\s+/g, " ").trim();
    expect(said).toMatch(
      /^pumpside: "held": [^.]*another console has the case open [^"]*: leave it there first\.$/,
    );
    expect(modesOf(second)).toEqual(AS_IT_WAS);
    await console.type(`b${enter}`);
    await console.waitFor(saved(2), PATIENCE);
    expect((await caseAt(path)).entries).toHaveLength(2);
  });

  test("is refused on the start screen, which stays usable", async () => {
    await running("held too");
    const second = startConsole({ dir: folder.dir });
    await second.waitFor("held too", PATIENCE);
    second.raw(enter);
    await second.waitFor("another console has the case open", PATIENCE);
    second.raw("q");
    expect(await second.exited).toEqual({ exitCode: 0, signal: undefined });
  });

  test("may look at it in review meanwhile", async () => {
    await running("looked at");
    const second = startConsole({ dir: folder.dir, args: ["review", "looked at"] });
    await second.waitFor("REVIEW", PATIENCE);
    second.raw("q");
    expect(await second.exited).toEqual({ exitCode: 0, signal: undefined });
  });
});
