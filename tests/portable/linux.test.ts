// The portable folder for Linux, as it runs on a machine that has nothing: no npm, no HOME, no rights, no network.

import { spawnSync } from "node:child_process";
import { chmodSync, chownSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { spawn } from "@lydell/node-pty";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { makeFolder } from "../../.ci/portable.js";

const NOBODY = 65534;
const asRoot = process.getuid?.() === 0;
const who = asRoot ? { uid: NOBODY, gid: NOBODY } : {};
/** A network of its own that leads nowhere, where the machine lets us have one. */
const offline =
  spawnSync("unshare", ["-rn", "true"], { ...who, cwd: "/" }).status === 0 ? ["unshare", "-rn"] : [];

let place = "";
let folder = "";

/** Runs the launcher with only these variables, away from the folder. */
function run(words: readonly string[], env: Record<string, string> = {}) {
  const [program = "", ...rest] = [...offline, join(folder, "pumpside"), ...words];
  return spawnSync(program, rest, { ...who, cwd: "/", env, encoding: "utf8" });
}

const sumsHold = () => spawnSync("sha256sum", ["-c", "--quiet", "SHA256SUMS"], { cwd: folder }).status;

beforeAll(async () => {
  place = mkdtempSync(join(tmpdir(), "pumpside-portable-"));
  folder = await makeFolder("linux-x64", place);
  const data = join(folder, "data");
  mkdirSync(data);
  if (asRoot) chownSync(data, NOBODY, NOBODY);
  for (const path of [place, folder]) chmodSync(path, 0o555);
}, 60_000);

afterAll(() => {
  for (const path of [place, folder]) chmodSync(path, 0o755);
  rmSync(place, { recursive: true, force: true });
});

describe.runIf(process.platform === "linux" && process.arch === "x64")(
  "the portable folder for Linux",
  () => {
    test("keeps a case in its data folder, logs to it and reads it back", () => {
      const made = run(["new", "--label", "valve-2", "--by", "KM"]);
      expect({ status: made.status, stderr: made.stderr }).toEqual({ status: 0, stderr: "" });
      expect(made.stdout.trim().startsWith(join(folder, "data"))).toBe(true);
      expect(run(["log", "valve-2", "h 30000"]).stdout).toMatch(/^saved #\d+ /);
      expect(run(["check", "valve-2"]).status).toBe(0);
      expect(run(["figures", "valve-2"]).stdout).toContain("heparin");
    });

    test("opens the sample cases", () => {
      expect(run(["review", join(folder, "sample-cases")]).stdout).toContain("bypass");
    });

    test("draws the console in a terminal", async () => {
      const seen = await new Promise<string>((resolve) => {
        let text = "";
        const pty = spawn(join(folder, "pumpside"), [], {
          cols: 80,
          rows: 24,
          cwd: "/",
          env: { TERM: "xterm" },
          ...who,
        });
        pty.onData((piece) => {
          text += piece;
          if (text.includes("cases in ")) pty.write("q");
        });
        pty.onExit(() => resolve(text));
      });
      expect(seen).toContain(join(folder, "data").slice(0, 20));
    });

    test("takes another place where one is named", () => {
      const { stdout } = run(["list", "--json"], { PUMPSIDE_DIR: join(place, "nowhere") });
      expect(JSON.parse(stdout)).toEqual([]);
    });

    test("is not led astray by what the machine sets for other programs on Node", () => {
      expect(run(["--version"], { NODE_OPTIONS: "--no-such-option" }).status).toBe(0);
    });

    test("has written nothing but cases into data", () => {
      expect(sumsHold()).toBe(0);
      const all = readdirSync(folder).sort();
      expect(all.filter((name) => !readFileSync(join(folder, "SHA256SUMS"), "utf8").includes(name))).toEqual([
        "SHA256SUMS",
        "data",
      ]);
    });

    test("has the licence of its runtime beside it, and a manual of every verb", () => {
      expect(readFileSync(join(folder, "runtime", "LICENSE"), "utf8")).toContain("Node.js is licensed");
      expect(readFileSync(join(folder, "MANUAL.txt"), "utf8")).toContain("PUMPSIDE PROTOCOL CHECK");
    });
  },
);
