// What a shell knows of the command line: every verb and option of the table, and nothing else.

import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Command } from "commander";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { runCommandLine } from "../../src/commands/command-line.ts";
import { commandTable } from "../../src/commands/command-table.ts";

const table = commandTable("1.2.3", async () => {});
const underneath = (command: Command): Command[] =>
  command.commands.flatMap((one) => [one, ...underneath(one)]);
const all = underneath(table);

/** What a call prints, and its exit code. */
async function told(...words: string[]): Promise<{ text: string; code: number }> {
  let text = "";
  const write = vi.spyOn(process.stdout, "write").mockImplementation((piece) => {
    text += piece;
    return true;
  });
  vi.spyOn(process.stderr, "write").mockImplementation(() => true);
  const code = await runCommandLine(words, "1.2.3");
  write.mockRestore();
  vi.restoreAllMocks();
  return { text, code };
}

let folder = "";
let script = "";

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "pumpside-completion-"));
  script = join(folder, "pumpside.bash");
  writeFileSync(script, (await told("completion", "bash")).text);
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What bash offers after these words; the last is being typed. */
function offered(...words: string[]): string[] {
  const line = `source "$0"; COMP_WORDS=(pumpside "$@"); COMP_CWORD=$#; _pumpside; printf '%s\\n' "\${COMPREPLY[@]}"`;
  return execFileSync("bash", ["-c", line, script, ...words], { cwd: folder, encoding: "utf8" })
    .split("\n")
    .filter((word) => word !== "");
}

describe("completion", () => {
  test("in bash offers verbs, then the options of the verb, then files", () => {
    expect(offered("fig")).toEqual(["figures"]);
    expect(offered("figures", "valve-2", "--j")).toEqual(["--json"]);
    expect(offered("protocol", "c")).toEqual(["check"]);
    expect(offered("keys", "--mark")).toEqual(["--markdown"]);
    expect(offered("review", "pump")).toEqual(["pumpside.bash"]);
  });

  test.each(["bash", "zsh", "powershell"])("in %s knows every verb and every option", async (shell) => {
    const { text, code } = await told("completion", shell);
    expect(code).toBe(0);
    for (const one of [table, ...all]) {
      if (one !== table) expect(text).toContain(one.name());
      for (const { long } of one.options) expect(text).toContain(long);
    }
  });

  test("for any other shell is a wrong call", async () => {
    expect((await told("completion", "fish")).code).toBe(2);
  });
});

describe("help", () => {
  test.each(all.filter(({ commands }) => commands.length === 0).map((one) => [one.name(), one] as const))(
    "of %s is in plain words and has an example that is a call of it",
    (name, one) => {
      let text = "";
      one.configureOutput({ writeOut: (piece) => (text += piece) }).outputHelp();
      expect(one.description()).toMatch(/^[a-z][^.]{5,}$/);
      expect(text).toMatch(new RegExp(`Example:\\n {2}pumpside (?:protocol )?${name}\\b`));
      const flags = [...text.matchAll(/^ {2}pumpside .*$/gm)].flatMap(
        ([line]) => line.match(/--[a-z-]+/g) ?? [],
      );
      const known = [...one.options, ...table.options].map(({ long }) => long);
      expect(flags.filter((flag) => !known.includes(flag))).toEqual([]);
      for (const argument of one.registeredArguments) expect(argument.description).not.toBe("");
    },
  );

  test("stands in the manual for every verb, with the strokes behind it", async () => {
    const { text } = await told("manual");
    for (const one of all) expect(text).toContain(one.description());
    expect(text).toMatch(/STROKES\n\nb {4}bypass on \/ off/);
  });
});
