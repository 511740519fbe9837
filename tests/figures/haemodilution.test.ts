/** Haematocrit as blood and other fluids meet, and the blood that is needed for another. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { allowableBloodLoss } from "../../src/figures/blood-loss.ts";
import { type Figure, known, missing } from "../../src/figures/figure.ts";
import {
  circulatingVolume,
  type Meeting,
  predictedHaematocrit,
  ultrafiltrateFor,
} from "../../src/figures/haemodilution.ts";
import { haemoglobinAt, patientHaematocrit } from "../../src/figures/haemoglobin.ts";
import { bloodForPrime, bloodOnTop } from "../../src/figures/red-cells.ts";

const mL = (value: number) => known(value, "mL", "given");
const percent = (value: number) => known(value, "%", "given");
const numberOf = ({ value }: Figure) => value ?? Number.NaN;

const meeting = (blood: number, hct: number, prime: number, more: Partial<Meeting> = {}): Meeting => ({
  bloodVolume: mL(blood),
  haematocrit: percent(hct),
  prime: mL(prime),
  cells: 0,
  other: 0,
  displaced: 0,
  ...more,
});

const volume = fc.double({ min: 200, max: 7000, noNaN: true });
const primed = fc.double({ min: 100, max: 2500, noNaN: true });
const thin = fc.double({ min: 10, max: 30, noNaN: true });
const more = fc.double({ min: 0.5, max: 15, noNaN: true });

describe("predicted haematocrit", () => {
  test("lies between that of the prime and that of the patient", () => {
    const red = fc.double({ min: 0, max: 0.6, noNaN: true });
    fc.assert(
      fc.property(volume, thin, primed, red, (blood, hct, prime, part) => {
        const predicted = numberOf(predictedHaematocrit(meeting(blood, hct, prime, { cells: prime * part })));
        expect(predicted).toBeGreaterThanOrEqual(Math.min(hct, part * 100) - 1e-9);
        expect(predicted).toBeLessThanOrEqual(Math.max(hct, part * 100) + 1e-9);
      }),
    );
  });

  test("falls with fluid that enters before the sample, and rises with prime displaced", () => {
    const plain = numberOf(predictedHaematocrit(meeting(4900, 38, 1400)));
    expect(predictedHaematocrit(meeting(4900, 38, 1400, { other: 200 })).value).toBeLessThan(plain);
    expect(predictedHaematocrit(meeting(4900, 38, 1400, { displaced: 400 })).value).toBeGreaterThan(plain);
  });

  test("says every term that is not nought", () => {
    expect(predictedHaematocrit(meeting(4900, 38, 1400)).working).toBe("(4900 × 38 %) / (4900 + 1400) mL");
    const all = meeting(290, 42, 410, { cells: 120, other: 54, displaced: 60 });
    expect(predictedHaematocrit(all).working).toBe("(290 × 42 % + 120 cells) / (290 + 410 + 54 − 60) mL");
    expect(circulatingVolume(all).value).toBe(694);
  });

  test("is not known without the patient's own", () => {
    const unknown = { ...meeting(4900, 38, 1400), haematocrit: missing("%", "no haematocrit recorded") };
    expect(predictedHaematocrit(unknown).working).toBe("no haematocrit recorded");
  });
});

describe("red cells needed", () => {
  test("on top, then mixed, give the wanted haematocrit back", () => {
    fc.assert(
      fc.property(volume, thin, more, (total, hct, rise) => {
        const wanted = hct + rise;
        const need = { volume: mL(total), haematocrit: percent(hct), wanted, product: 60 };
        const given = numberOf(bloodOnTop(need));
        const after = meeting(total, hct, given, { cells: given * 0.6 });
        expect(predictedHaematocrit(after).value).toBeCloseTo(wanted, 9);
      }),
    );
  });

  test("in the place of prime, leave the volume and give the wanted haematocrit", () => {
    fc.assert(
      fc.property(volume, thin, primed, more, (blood, hct, prime, rise) => {
        const before = meeting(blood, hct, prime);
        const haematocrit = predictedHaematocrit(before);
        const wanted = numberOf(haematocrit) + rise;
        const need = { volume: circulatingVolume(before), haematocrit, wanted, product: 60 };
        const ml = bloodForPrime(need, mL(prime)).value;
        fc.pre(ml !== null);
        expect(ml).toBeLessThanOrEqual(prime);
        expect(predictedHaematocrit(meeting(blood, hct, prime, { cells: ml * 0.6 })).value).toBeCloseTo(
          wanted,
          9,
        );
      }),
    );
  });

  const need = (wanted: number, product = 60) => ({
    volume: mL(600),
    haematocrit: percent(20),
    wanted,
    product,
  });

  test("on top are always more than in the place of prime, and each says which it is", () => {
    const [onTop, replacing] = [bloodOnTop(need(30)), bloodForPrime(need(30), mL(300))];
    expect([onTop.value, replacing.value]).toEqual([200, 100]);
    expect(onTop.working).toBe("added on top: 600 mL × (30 − 20) % / (60 − 30) %");
    expect(replacing.working).toBe("replacing prime: 600 mL × (30 − 20) % / 60 %");
  });

  test("are none where the haematocrit is there already", () => {
    expect(bloodOnTop(need(20))).toEqual({ value: 0, unit: "mL", working: "20 % is not below 20 %" });
    expect(bloodForPrime(need(18), mL(300)).value).toBe(0);
  });

  test("cannot come from blood that is thinner than what is wanted", () => {
    expect(bloodOnTop(need(40, 35))).toEqual({
      value: null,
      unit: "mL",
      working: "blood of 35 % cannot raise it to 40 %",
    });
  });

  test("cannot replace more prime than there is", () => {
    expect(bloodForPrime(need(50), mL(250)).working).toBe("300 mL would have to replace 250 mL of prime");
  });
});

describe("ultrafiltration", () => {
  test("of the volume it asks for gives the wanted haematocrit", () => {
    fc.assert(
      fc.property(volume, thin, more, (total, hct, rise) => {
        const removed = numberOf(ultrafiltrateFor(hct + rise, mL(total), percent(hct)));
        const after = meeting(total, hct, 0, { displaced: removed });
        expect(predictedHaematocrit(after).value).toBeCloseTo(hct + rise, 9);
      }),
    );
  });

  test("is not needed where the haematocrit is there already", () => {
    expect(ultrafiltrateFor(25, mL(7000), percent(28)).value).toBe(0);
  });
});

test("no loss of blood can be borne at the floor or below it", () => {
  expect(allowableBloodLoss(mL(5000), percent(25), 25).value).toBe(0);
  expect(allowableBloodLoss(mL(5000), percent(20), 25).working).toBe("20 % is not above 25 %");
});

describe("haematocrit and haemoglobin", () => {
  test("the measured haematocrit goes before one reckoned from haemoglobin", () => {
    expect(patientHaematocrit({ haematocrit: 38, haemoglobin: 14 }).value).toBe(38);
    expect(patientHaematocrit({ haemoglobin: 12 })).toMatchObject({ value: 36, working: "3 × 12 g/dL" });
    expect(patientHaematocrit({}).working).toBe("no haematocrit recorded");
  });

  test("haemoglobin falls in the patient's own proportion where both were measured", () => {
    const patient = { haematocrit: 40, haemoglobin: 14 };
    expect(haemoglobinAt(percent(20), patient)).toMatchObject({
      value: 7,
      source: "the patient's own proportion",
    });
    expect(haemoglobinAt(percent(21), { haematocrit: 40 })).toMatchObject({ value: 7 });
    expect(haemoglobinAt(percent(21), { haematocrit: 40 }).source).toMatch(/from memory$/);
  });
});
