/** The prime and what the tubing holds. */
import { describe, expect, test } from "vitest";
import { known } from "../../src/figures/figure.ts";
import {
  primeCells,
  primeTotal,
  replaceablePrime,
  tubingTotal,
  tubingVolume,
} from "../../src/figures/prime.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import { paediatricProtocol } from "../../src/protocol/paediatric.ts";

const bloody = {
  prime: [
    { fluid: "crystalloid", ml: 150 },
    { fluid: "red-cells", ml: 200 },
    { fluid: "plasma", ml: 50 },
  ],
};

describe("the prime", () => {
  test("is the protocol's usual one until the plan has its own", () => {
    expect(primeTotal({}, adultProtocol)).toMatchObject({
      value: 1400,
      working: "1300 mL balanced crystalloid + 100 mL mannitol",
      source: "from memory",
    });
    expect(primeTotal(bloody, paediatricProtocol)).toMatchObject({
      value: 400,
      working: "150 mL balanced crystalloid + 200 mL red cells + 50 mL plasma",
      source: "as planned",
    });
  });

  test("names a fluid that the protocol does not know as it was typed", () => {
    expect(primeTotal({ prime: [{ fluid: "own-brew", ml: 300 }] }, adultProtocol).working).toBe(
      "300 mL own-brew",
    );
  });

  test("of nothing is not known", () => {
    expect(primeTotal({ prime: [] }, adultProtocol).working).toBe("no prime planned");
  });

  test("counts the cells of its blood, and not the bags", () => {
    expect(primeCells(bloody, paediatricProtocol)).toMatchObject({ value: 120, working: "200 mL × 60 %" });
    expect(primeCells({}, adultProtocol)).toMatchObject({ value: 0, working: "no blood in the prime" });
  });

  test("can be replaced by blood as far as it is not blood already", () => {
    expect(replaceablePrime(known(400, "mL", "given"), bloody, paediatricProtocol).value).toBe(200);
    expect(replaceablePrime(known(150, "mL", "given"), bloody, paediatricProtocol).value).toBe(0);
  });
});

describe("tubing", () => {
  test("holds π/4 × bore² a metre", () => {
    expect(tubingVolume(9.525, 1.2)).toMatchObject({ working: "π/4 × (9.525 mm)² × 1.2 m" });
    expect(tubingVolume(9.525, undefined).working).toBe("no length recorded");
  });

  test("of several bores is added up", () => {
    const plan = {
      tubing: [
        { id: "bore-3-8", metres: 1.2 },
        { id: "bore-1-4", metres: 2 },
        { id: "bore-unknown", metres: 5 },
      ],
    };
    const total = tubingTotal(plan, adultProtocol);
    expect(total.value).toBeCloseTo(85.507 + 63.339, 2);
    expect(total.working).toBe("1.2 m of 3/8 inch + 2 m of 1/4 inch");
  });

  test("without a length holds nothing known", () => {
    expect(tubingTotal({}, adultProtocol).working).toBe("no length of tubing planned");
  });
});
