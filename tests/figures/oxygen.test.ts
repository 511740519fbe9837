/** Oxygen content, delivery, uptake, and the flow a target asks for. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { known } from "../../src/figures/figure.ts";
import {
  flowForDelivery,
  oxygenContent,
  oxygenDeliveryIndex,
  oxygenExtraction,
  oxygenUptakeIndex,
} from "../../src/figures/oxygen.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";

const { oxygen } = adultProtocol;
const index = (value: number) => known(value, "L/min/m2", "given");

describe("oxygen content", () => {
  test("says its formula with the numbers in it, and on whose word the constants stand", () => {
    const content = oxygenContent(8.5, 100, 200, oxygen);
    expect(content.working).toBe("1.34 × 8.5 g/dL × 100 % + 0.003 × 200 mmHg");
    expect(content.source).toContain("RCEM Learning");
  });

  test("is not known while one of its three values is not, and says which", () => {
    expect(oxygenContent(undefined, 99, 200, oxygen).working).toBe("no haemoglobin recorded");
    expect(oxygenContent(9, undefined, undefined, oxygen).working).toBe(
      "no arterial saturation recorded, no arterial pO2 recorded",
    );
    expect(oxygenContent(9, undefined, 40, oxygen, "venous").working).toBe("no venous saturation recorded");
  });
});

test("what content lacks, delivery and uptake lack too", () => {
  const unknown = oxygenContent(undefined, 99, 200, oxygen);
  const venous = oxygenContent(9, 75, 40, oxygen, "venous");
  expect(oxygenDeliveryIndex(unknown, index(2.4))).toEqual({
    value: null,
    unit: "mL/min/m2",
    working: "no haemoglobin recorded",
  });
  expect(oxygenUptakeIndex(unknown, venous, index(2.4)).working).toBe("no haemoglobin recorded");
});

test("a pump that stands still delivers nothing, which is a value", () => {
  expect(oxygenDeliveryIndex(oxygenContent(9, 99, 200, oxygen), index(0)).value).toBe(0);
});

test("blood without oxygen has no extraction, and no flow could deliver by it", () => {
  const none = oxygenContent(0, 0, 0, oxygen);
  expect(oxygenExtraction(none, none).value).toBeNull();
  expect(flowForDelivery(280, known(1.8, "m2", "given"), none).value).toBeNull();
});

test("the flow for a target delivers that target", () => {
  const input = {
    hb: fc.double({ min: 4, max: 18, noNaN: true }),
    area: fc.double({ min: 0.15, max: 3, noNaN: true }),
  };
  fc.assert(
    fc.property(input.hb, input.area, fc.integer({ min: 200, max: 400 }), (hb, area, target) => {
      const content = oxygenContent(hb, 99, 200, oxygen);
      const flow = flowForDelivery(target, known(area, "m2", "given"), content).value ?? 0;
      expect(oxygenDeliveryIndex(content, index(flow / area)).value).toBeCloseTo(target, 6);
    }),
  );
});
