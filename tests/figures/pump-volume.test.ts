/** What is left in the pump, and the net to the patient. */
import { describe, expect, test } from "vitest";
import { minutes, openedCase, runAt, typed } from "../helpers/typed-case.ts";

const run = ["08:30 v 1300 f", "09:00 b", "09:30 v 500 c", "09:40 l 700", "09:50 u 200"];
const off = [...run, "10:00 b"];

const left = (lines: readonly string[], clock = "11:00") => {
  const { pump } = runAt(typed(lines), clock);
  return [pump.left.value, pump.age === null ? null : pump.age / minutes(1)];
};

test("without a level nothing is known", () => {
  const { pump, netToPatient } = runAt(openedCase(), "09:00");
  expect([pump.left.value, pump.left.working, pump.age]).toEqual([null, "no level recorded", null]);
  expect(netToPatient.value).toBeNull();
});

describe("on bypass", () => {
  test("it is the last level with its age, whatever went in since", () => {
    expect(left([...run, "09:55 v 300 c"], "09:58")).toEqual([700, 18]);
  });

  test("there is no net to the patient yet", () => {
    expect(runAt(typed(run), "09:58").netToPatient).toMatchObject({
      value: null,
      working: "bypass has not ended",
    });
  });
});

describe("after bypass", () => {
  test.each<[string, string[], number]>([
    ["it is the last level", ["10:05 l 900"], 900],
    ["what was returned since is gone", ["10:05 l 900", "10:10 r 200", "10:15 r 100"], 600],
    ["what was returned before the level is in the level", ["10:02 r 200", "10:05 l 900"], 900],
    ["what went in since is there", ["10:05 l 900", "10:10 v 250 c"], 1150],
    ["ultrafiltrate and salvage since are gone", ["10:05 l 900", "10:10 o 300 u", "10:11 o 100 c"], 500],
    ["shed blood and urine do not come from the pump", ["10:05 l 900", "10:10 o 300 s", "10:11 u 80"], 900],
    ["a level put right carries on", ["10:05 l 900", "10:10 r 200", "10:11 z #8 950"], 750],
    ["a return put right carries on", ["10:05 l 900", "10:10 r 200", "10:11 z 150"], 750],
  ])("%s", (_, lines, ml) => {
    expect(left([...off, ...lines])[0]).toBe(ml);
  });

  test("what was returned in the minute of the level counts by which was written first", () => {
    expect(left([...off, "10:05 r 200", "10:05 l 900"])[0]).toBe(900);
    expect(left([...off, "10:05 l 900", "10:05 r 200"])[0]).toBe(700);
  });

  test("its working names each part", () => {
    const file = typed([...off, "10:05 l 900", "10:10 v 250 c", "10:12 r 200", "10:14 o 100 u"]);
    expect(runAt(file, "10:20").pump.left.working).toBe(
      "level 900 + in 250 − returned 200 − out of the pump 100",
    );
  });

  test("the net to the patient is what went in, less what came out, less what is left", () => {
    const file = typed([...off, "10:05 l 900", "10:10 r 200"]);
    expect(runAt(file, "10:20").netToPatient).toMatchObject({
      value: 1300 + 500 - 200 - 700,
      working: "net 1600 − left in the pump 700",
    });
  });

  test("the net to the patient is not known without a level", () => {
    expect(runAt(typed(["08:30 v 1300 f", "09:00 b", "10:00 b"]), "11:00").netToPatient).toMatchObject({
      value: null,
      working: "no level recorded",
    });
  });
});

test("back on bypass it is the last level again", () => {
  expect(left([...off, "10:05 l 900", "10:10 r 200", "10:20 b"], "10:30")).toEqual([900, 25]);
});
