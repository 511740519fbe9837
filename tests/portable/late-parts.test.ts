// How the parts of the bundle find each other: each is run once, with the first of its names that is used.

import { expect, test } from "vitest";
import { lateParts } from "../../.ci/late-parts.js";

type Exports = Record<string, unknown>;
type Require = (id: string) => Exports;

const node: Require = (id) => ({ isNodes: id });

/** Parts as the bundler writes them, and what has been run of them so far. */
function program() {
  const ran: string[] = [];
  const first = {
    "./a.js": (exports: Exports, require: Require) => {
      ran.push("a");
      const b = require("./b.js");
      const c = require("./c.js");
      exports.sum = (one: number) => (b.twice as (one: number) => number)(one) + 1;
      exports.ofC = () => c.name;
    },
    "./b.js": (exports: Exports, require: Require) => {
      ran.push("b");
      const a = require("./a.js");
      exports.twice = (one: number) => 2 * one;
      exports.back = () => (a.sum as (one: number) => number)(1);
    },
  };
  const rest = {
    "./c.js": (exports: Exports) => {
      ran.push("c");
      let count = 0;
      Object.defineProperty(exports, "count", { enumerable: true, get: () => ++count });
      exports.name = "c";
    },
  };
  const part = lateParts(
    first,
    () => {
      ran.push("rest");
      return rest;
    },
    node,
    "file:///here",
  );
  return { part, ran };
}

test("a part is run with the first of its names that is used, and once", () => {
  const { part, ran } = program();
  const a = part("./a.js");
  expect(ran).toEqual([]);
  expect(a.sum(3)).toBe(7);
  expect(a.sum(4)).toBe(9);
  expect(ran).toEqual(["a", "b"]);
});

test("parts may need each other", () => {
  const { part, ran } = program();
  expect(part("./b.js").back()).toBe(3);
  expect(ran).toEqual(["b", "a"]);
});

test("the rest is asked for with the first of its parts that is run", () => {
  const { part, ran } = program();
  const c = part("./c.js");
  expect(ran).toEqual([]);
  expect(part("./a.js").ofC()).toBe("c");
  expect(ran).toEqual(["a", "rest", "c"]);
  expect([c.count, c.count]).toEqual([1, 2]);
});

test("a part without a name has none, and what is no part is Node's own", () => {
  const { part } = program();
  expect(part("./b.js").missing).toBeUndefined();
  expect(part("./b.js").twice(2)).toBe(4);
  expect(part("events")).toEqual({ isNodes: "events" });
});
