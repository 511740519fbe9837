// Trends: what is charted of a case, in which unit, and over which time.

import { describe, expect, test } from "vitest";
import { courseOf } from "../../src/figures/run.ts";
import { isMeasured, lastHour, STEERED_BY, trendsOf, valueAt, wholeRun } from "../../src/figures/trends.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import type { CaseFile } from "../../src/record/case.ts";
import type { Draft } from "../../src/record/entry.ts";
import { at, given, minutes, openedCase, typedOn } from "../helpers/typed-case.ts";

const read = (file: CaseFile, values: Extract<Draft, { kind: "readings" }>["values"], clock: string) =>
  given(file, { kind: "readings", values }, clock);

const trend = (file: CaseFile, title: string) => {
  const found = trendsOf(courseOf(file)).find((one) => one.title === title);
  if (!found) throw new Error(`no trend is called ${title}`);
  return found;
};

const line = (file: CaseFile, title: string, name: string) => {
  const found = trend(file, title).lines.find((one) => one.name === name);
  if (!found) throw new Error(`${title} has no line ${name}`);
  return found;
};

describe("the trends of a case", () => {
  test("begin with the four that a run is steered by, measured or not", () => {
    const trends = trendsOf(courseOf(openedCase()));
    expect(trends.slice(0, STEERED_BY).map(({ title }) => title)).toEqual([
      "flow",
      "MAP",
      "temperature",
      "DO2i",
    ]);
    expect(trends.filter(isMeasured)).toEqual([]);
  });

  test("hold what was read, and not what was struck out or was something else", () => {
    const file = typedOn(read(read(openedCase(), { flow: 4 }, "08:10"), { meanPressure: 60 }, "08:20"), [
      "08:21 z#2 ! wrong pump",
    ]);
    expect(line(file, "flow", "flow").points).toEqual([]);
    expect(line(file, "MAP", "MAP").points).toMatchObject([{ at: at("08:20").ms, value: 60 }]);
  });

  test("are in the units that the protocol shows", () => {
    const shown = { ...adultProtocol.shown, gasPressure: "kPa" as const, glucose: "mg/dL" as const };
    const file = given(
      openedCase({ ...adultProtocol, shown }),
      { kind: "gas", sample: "arterial", values: { carbonDioxide: 40, glucose: 5 } },
      "08:30",
    );
    const dioxide = trend(file, "pCO2");
    expect(dioxide).toMatchObject({ unit: "kPa", decimals: 1 });
    expect(dioxide.lines[0]?.points[0]?.value).toBeCloseTo(5.333, 3);
    expect(dioxide.limits[0]).toBeCloseTo(4.666, 3);
    expect(trend(file, "glucose")).toMatchObject({ unit: "mg/dL", decimals: 0 });
  });

  test("keep arterial and venous samples apart", () => {
    const sampled = (["arterial", "venous"] as const).reduce(
      (file, sample) => given(file, { kind: "gas", sample, values: { oxygen: 200 } }, "08:30"),
      openedCase(),
    );
    expect(trend(sampled, "pO2").lines.map(({ sign, points }) => [sign, points.length])).toEqual([
      ["a", 1],
      ["v", 1],
    ]);
  });
});

test("a value is relied on until the protocol says it is too old, or the next one comes", () => {
  const file = read(read(openedCase(), { flow: 4 }, "08:10"), { flow: 5 }, "08:20");
  const flow = line(file, "flow", "flow");
  const value = (clock: string, more = 0) => valueAt(flow, at(clock).ms + more)?.value;
  expect(value("08:09:59")).toBeUndefined();
  expect(value("08:10")).toBe(4);
  expect(value("08:20")).toBe(5);
  expect(value("08:40")).toBe(5);
  expect(value("08:40", 1)).toBeUndefined();
});

describe("the window", () => {
  test("of the last hour ends now", () => {
    expect(lastHour(at("10:00").ms)).toEqual({ from: at("09:00").ms, to: at("10:00").ms });
  });

  test("of the whole run reaches from the first that was measured or begun to the last", () => {
    const file = typedOn(read(openedCase(), { flow: 4 }, "08:10"), ["08:15 b", "09:50 b", "09:55 a128"]);
    expect(wholeRun(courseOf(file), at("12:00").ms)).toEqual({ from: at("08:10").ms, to: at("09:55").ms });
  });

  test("reaches to now while bypass is on", () => {
    const file = typedOn(openedCase(), ["08:15 b"]);
    expect(wholeRun(courseOf(file), at("09:00").ms)).toEqual({ from: at("08:15").ms, to: at("09:00").ms });
  });

  test("is never shorter than ten minutes, and the last hour where there is nothing", () => {
    const { from, to } = wholeRun(courseOf(typedOn(openedCase(), ["08:15 a120"])), at("09:00").ms);
    expect(to - from).toBe(minutes(10));
    expect(wholeRun(courseOf(openedCase()), at("09:00").ms)).toEqual(lastHour(at("09:00").ms));
  });
});
