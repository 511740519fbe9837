// What a failure of the disk means, in words that name nobody.

import { expect, test } from "vitest";
import { faultWords, readingFaultWords, refusal } from "../../src/store/fault-words.ts";

const system = (code: string) =>
  Object.assign(new Error(`${code}: open '/cases/smith-john.json'`), {
    code,
    path: "/cases/smith-john.json",
  });

test.each([
  ["ENOSPC", "the disk is full"],
  ["EROFS", "the folder may not be written to"],
  ["EACCES", "the folder may not be written to"],
  ["EPERM", "the folder may not be written to"],
  ["ENOENT", "the folder is gone"],
  ["EIO", "the disk reports a fault"],
  ["EWHATEVER", "the disk answered EWHATEVER"],
])("%s: %s", (code, words) => {
  expect(faultWords(system(code))).toBe(words);
});

test.each([
  ["ENOENT", "there is no such file"],
  ["EACCES", "this user may not read it"],
])("%s in reading: %s", (code, words) => {
  expect(readingFaultWords(system(code))).toBe(words);
});

test("words of our own are passed on, and a mistake of the program's is not spelt out", () => {
  expect(faultWords(refusal("entry 3 is out of order"))).toBe("entry 3 is out of order");
  for (const odd of [new TypeError("smith-john is undefined"), "smith", null, undefined, 7, { code: 7 }]) {
    expect(faultWords(odd)).toBe("something in the program went wrong");
  }
});
