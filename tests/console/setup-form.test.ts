/** The form for the patient and the plan: what it takes, what it warns of, and what it refuses. */
import { describe, expect, test } from "vitest";
import { openModel } from "../../src/console/model.ts";
import { meaning } from "../../src/console/open-line.ts";
import { courseOf } from "../../src/figures/run.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import { press } from "../helpers/console-keys.ts";
import { at, openedCase, refusal, typed } from "../helpers/typed-case.ts";

const inGramsALitre = { ...adultProtocol, shown: { ...adultProtocol.shown, haemoglobin: "g/L" as const } };

/** What the console says while a value stands in a field of the form. */
function saidWith(field: string, before: string, text: string): string {
  const down = { name: "down" } as const;
  const fields = ["number", "sex", "age", "weight", "height", "Hct", "Hb"];
  const open = press(openModel(openedCase()), "k", at("08:00"));
  const filled = fields
    .slice(0, fields.indexOf(field))
    .reduce(
      (model, id) => press(press(model, id === "weight" ? before : "", at("08:00")), [down], at("08:00")),
      open,
    );
  return meaning(press(filled, text, at("08:00"))).text;
}

describe("the record holds", () => {
  test("what was typed and the canonical value", () => {
    const file = typed(["08:00 k weight=180lb height=5.9in sex=m Hb=12,4"]);
    expect(file.entries.at(-1)).toMatchObject({
      kind: "patient",
      typed: "k weight=180lb height=5.9in sex=m Hb=12,4",
      weight: expect.closeTo(81.647, 3),
      height: expect.closeTo(14.986, 3),
      haemoglobin: 12.4,
    });
  });

  test("haemoglobin in g/dL whatever the unit shows", () => {
    expect(typed(["08:00 k Hb=124"], inGramsALitre).entries.at(-1)).toMatchObject({ haemoglobin: 12.4 });
  });

  test("the prime as one volume in, put right when it is told again", () => {
    const once = typed(["08:00 k prime=1400"]);
    expect(once.entries.at(-1)).toMatchObject({ kind: "volume", direction: "in", fluid: "prime", ml: 1400 });
    const again = typed(["08:00 k prime=1400", "08:10 k prime=1200"]);
    expect(again.entries.at(-1)).toMatchObject({ kind: "amend", target: "e2", changes: { ml: 1200 } });
    expect(courseOf(again).balances.fluidIn.value).toBe(1200);
  });

  test("only what is new: a change during the run is an entry and moves what follows from it", () => {
    const before = typed(["08:00 k weight=80 height=180 sex=m"]);
    const after = typed(["08:00 k weight=80 height=180 sex=m", "09:00 k weight=90 height=180"]);
    expect(after.entries.at(-1)).toMatchObject({ kind: "patient", weight: 90 });
    expect(after.entries.at(-1)).not.toHaveProperty("height");
    const full = [before, after].map((file) => courseOf(file).fullFlow.value ?? 0);
    expect(full[1]).toBeGreaterThan(full[0] as number);
  });

  test("a pack's size, lot and expiry, typed or scanned", () => {
    const [typedIn, scanned] = [
      'oxygenator="adult A123 2027-03"',
      "oxygenator=01095060001343521727033110A123",
    ].map((text) => typed([`08:00 j ${text}`]).entries.at(-1));
    expect(typedIn).toMatchObject({
      components: [{ component: "oxygenator", lot: "adult A123", expires: "2027-03" }],
    });
    expect(scanned).toMatchObject({
      components: [{ component: "oxygenator", lot: "A123", expires: "2027-03-31" }],
    });
  });
});

test("what is hard to believe is said once more before Enter writes the form", () => {
  const filled = press(openModel(openedCase()), "k\n\n\n380\n172\n", at("08:00"));
  expect(meaning(filled)).toMatchObject({ kind: "hint" });
  const last = meaning(press(filled, ";", at("08:00")));
  expect(last).toMatchObject({
    kind: "fault",
    text: expect.stringMatching(/^Weight 380 kg .*all the same\.$/),
  });
});

test("what the laboratory told before the run, glucose in the unit that is shown", () => {
  const inMilligrams = { ...adultProtocol, shown: { ...adultProtocol.shown, glucose: "mg/dL" as const } };
  const file = typed(["08:00 k K=4.2 Na=139 glucose=100 creat=88 plt=210"], inMilligrams);
  expect(file.entries.at(-1)).toMatchObject({
    kind: "patient",
    potassium: 4.2,
    sodium: 139,
    glucose: expect.closeTo(5.55, 2),
    creatinine: 88,
    platelets: 210,
  });
});

describe("a value that can hardly be meant is pointed out and taken", () => {
  test.each([
    ["height", "80", "1.8", /in metres it would be 180 cm/],
    ["weight", "", "380", /unlikely/],
    ["Hb", "80", "124", /^Hb lies between 0.0 and 30.0 g\/dL\. .* in g\/L it would be 12.4 g\/dL/],
    ["Hct", "80", "178", /^Hct lies between 0 and 90 %\. /],
    ["Hct", "80", "0.41", /41/],
  ])("%s", (field, weight, text, says) => {
    expect(saidWith(field, weight, text)).toMatch(says);
  });

  test("a height in inches beside a weight in kilograms", () => {
    expect(saidWith("height", "80", "71")).toMatch(/body mass index|inches/);
  });
});

describe("a value that cannot be meant is refused in one sentence that names the field", () => {
  test.each([
    ["weight=0", "0 kg cannot be weight: it lies between 0.2 and 400."],
    ["weight=-70", "-70 kg cannot be weight: it lies between 0.2 and 400."],
    ["weight=heavy", '"heavy" is not a number: type such as 78.'],
    ["weight=80st", '"80st" has no unit that is known here: type such as 78.'],
    ["height=900", "900 cm cannot be height: it lies between 0.3 and 260."],
    ["age=200", "200 years cannot be age: it lies between 0 and 130."],
    ["solution=brown", /^"brown" is not one of .+: type its first letter\.$/],
    ["wait=80", /^"wait" is no field of patient and plan: its fields are .+\.$/],
    ["", "Nothing new was typed: Esc sets the form aside."],
  ])("%s", (text, says) => {
    const said = refusal(openedCase(), `k ${text}`);
    if (typeof says === "string") expect(said).toBe(says);
    else expect(said).toMatch(says);
  });
});
