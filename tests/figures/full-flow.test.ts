/** Full flow, and the litres an order means. */
import { describe, expect, test } from "vitest";
import { bandFor } from "../../src/figures/full-flow.ts";
import { litresOf } from "../../src/figures/phase.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import { paediatricProtocol } from "../../src/protocol/paediatric.ts";
import type { Draft } from "../../src/record/entry.ts";
import { given, openedCase, runAt } from "../helpers/typed-case.ts";

type Facts = { patient?: object; plan?: object };

const flow = ({ patient, plan }: Facts, protocol = adultProtocol) => {
  let file = openedCase(protocol);
  if (patient) file = given(file, { kind: "patient", ...patient } as Draft, "08:00");
  if (plan) file = given(file, { kind: "plan", ...plan } as Draft, "08:01");
  return runAt(file, "09:00").course.fullFlow;
};

const adult = { weight: 80, height: 180 };

describe("full flow", () => {
  test("is the index times the surface", () => {
    expect(flow({ patient: adult })).toMatchObject({ working: "2.4 L/min/m² × 2.00 m²", unit: "L/min" });
    expect(flow({ patient: adult }).value).toBeCloseTo(2.4 * 1.9964, 3);
  });

  test("is what the plan says, or goes by the index of the plan", () => {
    expect(flow({ patient: adult, plan: { fullFlow: 4.2 } })).toMatchObject({
      value: 4.2,
      working: "as planned",
    });
    const indexed = flow({ patient: adult, plan: { flowIndex: 2.2 } });
    expect(indexed.value).toBeCloseTo(2.2 * 1.9964, 3);
    expect(indexed.source).toBe("as planned");
  });

  test("goes by the weight table for the small, a step including its upper bound", () => {
    const weights = [3, 3.1, 10, 10.1, 60];
    expect(weights.map((weight) => flow({ patient: { weight } }, paediatricProtocol).value)).toEqual([
      (200 * 3) / 1000,
      (150 * 3.1) / 1000,
      (150 * 10) / 1000,
      (125 * 10.1) / 1000,
      (65 * 60) / 1000,
    ]);
  });

  test.each<[string, Facts, string]>([
    ["a weight", { patient: { height: 180 } }, "no weight recorded"],
    ["a height", { patient: { weight: 80 } }, "no height recorded"],
    ["a patient", {}, "no weight recorded"],
  ])("is not known without %s, and says so", (_, facts, working) => {
    expect(flow(facts)).toMatchObject({ value: null, working });
  });

  test("takes the patient as last told, field by field", () => {
    const file = given(
      given(openedCase(), { kind: "patient", ...adult }, "08:00"),
      { kind: "patient", weight: 70 },
      "08:10",
    );
    expect(runAt(file, "09:00").course.patient).toMatchObject({ weight: 70, height: 180 });
  });
});

test("a table without a last step has none for what lies above it", () => {
  const bands = [
    { upTo: 3, value: 1 },
    { upTo: 10, value: 2 },
  ];
  expect([3, 3.01, 10, 11].map((value) => bandFor(bands, value)?.value)).toEqual([1, 2, 2, undefined]);
});

test("an order means litres, a fraction of full, or nothing while full is not known", () => {
  expect([
    litresOf({ litresPerMinute: 4.5 }, null),
    litresOf({ fraction: 0.75 }, 4),
    litresOf({ fraction: 0.75 }, null),
  ]).toEqual([4.5, 3, null]);
});
