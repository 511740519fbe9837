/** The list of settings from which the documentation of the protocol file is written. */
import { expect, test } from "vitest";
import { settings } from "../../src/protocol/settings.ts";
import { SHIPPED } from "../../src/protocol/shipped.ts";

const all = settings();
const places = new Set(all.map(({ place }) => place));

test("a setting says what it decides, what it expects and whether it has to be there", () => {
  expect(all.find(({ place }) => place === "coagulation · actForBypass")).toEqual({
    place: "coagulation · actForBypass",
    says: "ACT wanted before and on bypass, met at this value",
    expects: '{"value": n} with a number between 100 and 1000 s for n',
    needed: true,
  });
  expect(all.find(({ place }) => place === "solutions · interval")?.needed).toBe(false);
});

test("no setting is listed twice, and every single number says what it decides", () => {
  expect(places.size).toBe(all.length);
  const numbers = all.filter(({ expects }) => expects.startsWith('{"value"'));
  expect(numbers.length).toBeGreaterThan(30);
  expect(numbers.filter(({ says }) => says === "")).toEqual([]);
});

test.each(SHIPPED.map((protocol) => [protocol.name, protocol] as const))(
  "every group of the %s protocol is listed",
  (_, protocol) => {
    const groupsIn = (json: unknown, place: string): string[] => {
      if (Array.isArray(json)) return json.flatMap((member) => groupsIn(member, place));
      if (typeof json !== "object" || json === null) return [];
      return Object.entries(json).flatMap(([name, value]) => {
        const here = place === "" ? name : `${place} · ${name}`;
        return typeof value === "object" && value !== null ? [here, ...groupsIn(value, here)] : [];
      });
    };
    expect(groupsIn(protocol, "").filter((place) => !places.has(place))).toEqual([]);
  },
);
