// What a terminal can show, as told by its environment.

import { describe, expect, test } from "vitest";
import { needsAscii, withoutColours } from "../../src/commands/terminal.ts";

describe("plain ASCII is written", () => {
  test.each([
    ["to the console of Linux", { TERM: "linux", LANG: "en_GB.UTF-8" }, "linux"],
    ["to a terminal that can do nothing", { TERM: "dumb" }, "linux"],
    ["where the locale has another encoding", { TERM: "xterm", LANG: "de_DE.ISO-8859-1" }, "linux"],
    ["where LC_ALL overrules LANG", { TERM: "xterm", LANG: "en_GB.UTF-8", LC_ALL: "C" }, "linux"],
    ["to an old Windows console", {}, "win32"],
    ["to an old Windows console with code page 437", { PUMPSIDE_CODE_PAGE: "437" }, "win32"],
  ] as const)("%s", (_where, env, platform) => {
    expect(needsAscii(env, platform)).toBe(true);
  });
});

describe("all signs are written", () => {
  test.each([
    ["where the locale is UTF-8", { TERM: "xterm", LANG: "en_GB.UTF-8" }, "linux"],
    ["where no locale is set", { TERM: "xterm-256color" }, "linux"],
    ["in tmux", { TERM: "screen", LANG: "C.utf8" }, "linux"],
    ["in the new Windows terminal", { WT_SESSION: "1", PUMPSIDE_CODE_PAGE: "437" }, "win32"],
    ["to an old Windows console with code page 65001", { PUMPSIDE_CODE_PAGE: "65001" }, "win32"],
  ] as const)("%s", (_where, env, platform) => {
    expect(needsAscii(env, platform)).toBe(false);
  });
});

test("without colours a text keeps its weight, its reverse and its words", () => {
  expect(
    withoutColours("\x1b[1m\x1b[32msaved 3\x1b[39m\x1b[22m \x1b[7m\x1b[48;5;9mx\x1b[49m\x1b[27m\x1b[2K"),
  ).toBe("\x1b[1msaved 3\x1b[22m \x1b[7mx\x1b[27m\x1b[2K");
});
