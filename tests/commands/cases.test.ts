// Making cases, listing them, and naming one by its label, its id or its path.

import { chmod, readFile, stat, writeFile } from "node:fs/promises";
import { basename, join, relative } from "node:path";
import { afterEach, beforeEach, describe, expect, onTestFinished, test } from "vitest";
import {
  CASE_FAULT,
  caseFolder,
  expectDone,
  expectRefused,
  ordinaryUsersFolder,
  WRONG_CALL,
} from "./pumpside.ts";

let cases: Awaited<ReturnType<typeof caseFolder>>;
beforeEach(async () => {
  cases = await caseFolder();
});
afterEach(() => cases.remove());

const made = async (...options: string[]): Promise<string> =>
  expectDone(await cases.pumpside("new", ...options)).trim();

const idOf = (path: string): string => basename(path, ".json").replace(/^case-/, "");

describe("new", () => {
  test("makes a case, prints its path, and writes who opened it by which protocol", async () => {
    const path = await made("--label", "valve 2", "--by", "KM");
    const file = JSON.parse(await readFile(path, "utf8"));
    expect(file).toMatchObject({
      format: "pumpside-case",
      label: "valve 2",
      protocol: { name: "adult" },
      entries: [{ kind: "opened", operator: "KM" }],
    });
    expect(file.id).toBe(idOf(path));
    expect((await stat(path)).mode & 0o077).toBe(0);
  });

  test("calls a case without a label by its id", async () => {
    const path = await made();
    expect(expectDone(await cases.pumpside("list"))).toMatch(
      new RegExp(`^date .*\n.* ${idOf(path)}  open .* ${idOf(path)}\n$`),
    );
  });

  test("takes a unit's own protocol, and the case keeps it", async () => {
    const shipped = JSON.parse(expectDone(await cases.pumpside("protocol", "show", "adult")));
    const own = join(cases.dir, "own.protocol");
    await writeFile(own, JSON.stringify({ ...shipped, name: "our unit" }));
    expect(expectDone(await cases.pumpside("protocol", "check", own))).toBe(
      'The protocol "our unit" can be used.\n',
    );
    const path = await made("--protocol", own);
    expect(JSON.parse(await readFile(path, "utf8")).protocol).toEqual({ ...shipped, name: "our unit" });
  });

  test("refuses a protocol that is missing or faulty, and makes nothing", async () => {
    const missing = await cases.pumpside("new", "--protocol", "none.json");
    expectRefused(missing, WRONG_CALL, /protocol file "none.json" cannot be read: check its name/);
    const faulty = join(cases.dir, "faulty.protocol");
    const shipped = JSON.parse(expectDone(await cases.pumpside("protocol", "show", "adult")));
    await writeFile(faulty, JSON.stringify({ ...shipped, usualSolution: "lemonade" }));
    const refused = await cases.pumpside("new", "--protocol", faulty);
    expectRefused(refused, WRONG_CALL, /has a fault at usualSolution: .*protocol check says what to do/);
    const checked = await cases.pumpside("protocol", "check", faulty);
    expect(checked).toMatchObject({ code: CASE_FAULT, out: expect.stringContaining("usualSolution") });
    expect(checked.err).toBe("pumpside: 1 fault: the protocol cannot be used yet.\n");
    expect(expectDone(await cases.pumpside("list"))).toMatch(/^No case here yet/);
  });
});

describe("list", () => {
  test("shows the newest first, as rows and as data", async () => {
    const paths = [await made("--label", "one"), await made("--label", "two")];
    expectDone(await cases.pumpside("log", "one", "b"));
    const rows = expectDone(await cases.pumpside("list"))
      .trimEnd()
      .split("\n");
    expect(rows).toHaveLength(3);
    expect(rows[1]).toMatch(/ open +– +– +– +two$/);
    expect(rows[2]).toMatch(/ open +0:\d\d\+ +– +– +one$/);
    expect(expectDone(await cases.pumpside("list", "--label", "TWO", "--state", "open"))).not.toContain(
      "one",
    );
    expect(expectDone(await cases.pumpside("list", "--until", "2020-01-01"))).toBe("No case is like that.\n");
    expectRefused(await cases.pumpside("list", "--since", "2026-02-30"), WRONG_CALL, /is no day/);
    const data = JSON.parse(expectDone(await cases.pumpside("list", "--json")));
    expect(data).toMatchObject([
      { id: idOf(paths[1] as string), label: "two", state: "open", entries: 1 },
      { id: idOf(paths[0] as string), label: "one", state: "open", entries: 2 },
    ]);
  });

  test("shows a file that cannot be read with its fault, and passes over what is not ours", async () => {
    const path = await made("--label", "spoilt");
    await writeFile(path, "spoilt");
    await writeFile(join(cases.dir, "letter.json"), "{}");
    const [, ...rows] = expectDone(await cases.pumpside("list"))
      .trimEnd()
      .split("\n");
    expect(rows).toHaveLength(1);
    expect(rows[0]).toMatch(
      new RegExp(`^ +${idOf(path)}  unread +cannot be read: the file is not JSON, or was cut short.$`),
    );
  });
});

describe("a case", () => {
  test("is named by its label, its id, its path, and a path from where one is", async () => {
    const path = await made("--label", "valve 2");
    for (const name of ["valve 2", idOf(path), path, `./${relative(cases.dir, path)}`])
      expect(JSON.parse(expectDone(await cases.pumpside("figures", name, "--json")))).toMatchObject({
        label: "valve 2",
      });
  });

  test.each(["check", "figures", "review", "log"])(
    "that nobody knows is a wrong call of %s",
    async (verb) => {
      await made("--label", "valve 2");
      const refused = await cases.pumpside(verb, "valve 3", ...(verb === "log" ? ["b"] : []));
      expectRefused(refused, WRONG_CALL, /"valve 3": no case here .* `pumpside list` shows the cases\./);
    },
  );

  test("whose label two have is named by its id", async () => {
    const ids = [idOf(await made("--label", "valve")), idOf(await made("--label", "valve"))];
    const refused = await cases.pumpside("log", "valve", "b");
    expectRefused(refused, WRONG_CALL, /2 cases have that label: name one by its id/);
    for (const id of ids) expect(refused.err).toContain(id);
    for (const id of ids)
      expect(expectDone(await cases.pumpside("check", id))).toContain("1 entries, still open");
  });
});

describe.skipIf(process.platform === "win32")("a folder that may not be written to", () => {
  test("takes no case and no stroke, and its cases can still be read", async () => {
    const theirs = await ordinaryUsersFolder();
    onTestFinished(() => theirs.remove());
    const path = expectDone(await theirs.pumpside("new", "--label", "kept")).trim();
    const before = await readFile(path, "utf8");
    await chmod(theirs.dir, 0o500);
    expectRefused(
      await theirs.pumpside("new"),
      CASE_FAULT,
      /can't be made: the folder may not be written to/,
    );
    const logged = await theirs.pumpside("log", "kept", "b");
    expectRefused(logged, CASE_FAULT, /nothing was logged: .*the folder may not be written to/);
    expect(expectDone(await theirs.pumpside("check", "kept"))).toMatch(/^The case is valid and whole/);
    expect(await readFile(path, "utf8")).toBe(before);
    await chmod(theirs.dir, 0o700);
    expect(expectDone(await theirs.pumpside("log", "kept", "b"))).toMatch(/^saved #2 .* bypass on\n$/);
  });
});
