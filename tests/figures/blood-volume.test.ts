/** Blood volume by bands and after Nadler. */
import { describe, expect, test } from "vitest";
import { bloodVolume, bloodVolumePerKg } from "../../src/figures/blood-volume.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import { paediatricProtocol } from "../../src/protocol/paediatric.ts";

describe("by weight bands", () => {
  test.each([
    [10, 850],
    [10.1, 808],
    [20, 1600],
    [40, 2800],
    [40.1, 2606.5],
  ])("a band includes its upper bound: %s kg", (weight, ml) => {
    expect(bloodVolume({ weight }, paediatricProtocol).value).toBeCloseTo(ml, 6);
  });

  test("a table that ends below the weight has no figure for it", () => {
    const bloodVolumeBands = [{ upTo: 40, value: 70 }];
    const protocol = { ...paediatricProtocol, body: { ...paediatricProtocol.body, bloodVolumeBands } };
    expect(bloodVolume({ weight: 60 }, protocol)).toEqual({
      value: null,
      unit: "mL",
      working: "no step of the blood volume table holds 60 kg",
    });
  });
});

describe("after Nadler", () => {
  const man = { sex: "male", weight: 80, height: 180 } as const;

  test("takes the height in metres", () => {
    const { value, working } = bloodVolume(man, adultProtocol);
    expect(value).toBeCloseTo(5319.1, 1);
    expect(working).toBe("Nadler: 1000 × (0.3669 × 1.8³ + 0.03219 × 80 + 0.6041)");
  });

  test("goes by weight alone where the sex or the height is missing, and says so", () => {
    expect(bloodVolume({ weight: 80, height: 180 }, adultProtocol)).toMatchObject({
      value: 5200,
      working: "65 mL/kg × 80 kg (by weight alone: no sex recorded)",
    });
    expect(bloodVolume({ sex: "female", weight: 80 }, adultProtocol).working).toBe(
      "65 mL/kg × 80 kg (by weight alone: no height recorded)",
    );
  });

  test("goes by weight alone in a newborn, for whom it was never made", () => {
    const { value, working } = bloodVolume({ sex: "male", weight: 3.4, height: 50 }, adultProtocol);
    expect(value).toBeCloseTo(221, 9);
    expect(working).toBe("65 mL/kg × 3.4 kg (by weight alone: Nadler gives 223 mL/kg: that cannot be)");
  });

  test("is not known without a weight", () => {
    expect(bloodVolume({ sex: "male", height: 180 }, adultProtocol).working).toBe("no weight recorded");
  });

  test("by weight it is what the textbooks expect", () => {
    const perKg = bloodVolumePerKg(bloodVolume(man, adultProtocol), man);
    expect(perKg.value).toBeCloseTo(66.5, 1);
    expect(perKg.unit).toBe("mL/kg");
  });
});
