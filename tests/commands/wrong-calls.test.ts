// Calls that no verb takes: one sentence on standard error, what to do instead, and the code 2.

import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { caseFolder, expectDone, expectRefused, WRONG_CALL } from "./pumpside.ts";

let cases: Awaited<ReturnType<typeof caseFolder>>;
beforeAll(async () => {
  cases = await caseFolder();
  expectDone(await cases.pumpside("new", "--label", "valve 2"));
});
afterAll(() => cases.remove());

describe("a wrong call is told in one sentence", () => {
  test.each<[string, string[], RegExp]>([
    ["a verb that there is not", ["dance"], /there is no verb "dance".*--help lists the verbs/],
    ["a verb with a slip", ["chek", "valve 2"], /there is no verb "chek": did you mean check;/],
    ["a case without a verb", ["valve 2"], /pumpside run "valve 2" opens a case/],
    ["an option that there is not", ["list", "--frob"], /unknown option '--frob'/],
    ["an option with a slip", ["list", "--jsn"], /unknown option '--jsn' \(Did you mean --json\?\)/],
    ["a word too many", ["list", "all"], /list takes options alone/],
    ["a stroke without quotes", ["log", "valve 2", "d", "300"], /log takes 2 words, not 3: .* in quotes/],
    ["a case left out", ["check"], /missing required argument 'case'/],
    ["a verb's own verb left out", ["protocol"], /protocol takes check, show or settings/],
    ["a verb's own verb that there is not", ["protocol", "mend"], /protocol takes check, show or settings/],
    ["an option's value left out", ["list", "--dir"], /'--dir <folder>' argument missing/],
    ["a form of report that there is not", ["report", "valve 2", "--as", "song"], /Allowed choices are text/],
    ["a form of report left out", ["report", "valve 2"], /required option '--as <format>' not specified/],
    ["a speed that is none", ["demo", "--speed", "fast"], /"fast" is no speed: type a number such as 60/],
    ["help on a verb that there is not", ["help", "dance"], /there is no verb "dance"/],
  ])("%s", async (_what, words, says) => {
    expectRefused(await cases.pumpside(...words), WRONG_CALL, says);
  });
});

describe("without a terminal", () => {
  test.each([[["run"]], [["run", "valve 2"]], [[]]])(
    "%j says so and names the verbs that work without one",
    async (words) => {
      expectRefused(
        await cases.pumpside(...words),
        WRONG_CALL,
        /needs a terminal: .* new, log, figures, report, list, check, review, keys or demo/,
      );
    },
  );
});

describe("help", () => {
  test("names every verb, on standard output", async () => {
    const out = expectDone(await cases.pumpside("--help"));
    for (const verb of ["new", "run", "log", "review", "figures", "report", "list", "check", "demo", "keys"])
      expect(out).toMatch(new RegExp(`^ {2}${verb}\\b`, "m"));
    expect(out).toContain("not a medical device");
  });

  test("shows an example of each verb", async () => {
    const { out } = await cases.pumpside("--help");
    const verbs = [...out.matchAll(/^ {2}(\w+)(?: \[options\])?(?: [[<]\w+[\]>])* {2,}\S/gm)]
      .map(([, verb = ""]) => verb)
      .filter((verb) => verb !== "help" && verb !== "protocol");
    expect(verbs.length).toBeGreaterThanOrEqual(11);
    for (const verb of verbs) {
      const help = expectDone(await cases.pumpside("help", verb));
      expect(help).toContain(`Example:\n  pumpside ${verb}`);
    }
  });

  test("the version is that of the package", async () => {
    const { default: packageJson } = await import("../../package.json", { with: { type: "json" } });
    expect(expectDone(await cases.pumpside("--version"))).toBe(`${packageJson.version}\n`);
  });
});
