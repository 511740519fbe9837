/** Figures made of figures. */
import { expect, test } from "vitest";
import { derived, given } from "../../src/figures/derived.ts";
import { known, missing } from "../../src/figures/figure.ts";

const half = (value: number | undefined) =>
  derived("mL", [given(value, "mL", "level")], (ml) => ({ value: ml / 2, working: `${ml} / 2` }));

test("a figure is made of the values of others", () => {
  expect(half(300)).toEqual({ value: 150, unit: "mL", working: "300 / 2" });
});

test("nought is a value, and nothing recorded is none", () => {
  expect(half(0).value).toBe(0);
  expect(half(undefined)).toEqual({ value: null, unit: "mL", working: "no level recorded" });
});

test("what several inputs lack is said once", () => {
  const lacksBoth = missing("m2", "no weight recorded, no height recorded");
  const lacksOne = missing("kg", "no weight recorded");
  expect(derived("L/min", [lacksOne, lacksBoth], () => ({ value: 1, working: "" })).working).toBe(
    "no weight recorded, no height recorded",
  );
});

test("a division by nought has no value, and the working stands", () => {
  const figure = derived("L/min", [known(0, "mL/dL", "given")], (held) => ({
    value: 280 / held,
    working: `280 / ${held}`,
  }));
  expect(figure).toEqual({ value: null, unit: "L/min", working: "no value: 280 / 0" });
});
