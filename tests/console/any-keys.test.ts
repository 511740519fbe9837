/** Whatever keys are pressed: nothing throws, nothing that was written is lost, and Esc leads back. */
import fc from "fast-check";
import { expect, test } from "vitest";
import type { Key } from "../../src/console/key.ts";
import { type Message, type Model, openModel } from "../../src/console/model.ts";
import { STROKES } from "../../src/console/strokes/table.ts";
import { update } from "../../src/console/update.ts";
import { entrySchema } from "../../src/record/entry.ts";
import { anyText } from "../helpers/any-text.ts";
import { ESCAPE, press } from "../helpers/console-keys.ts";
import { at, typed } from "../helpers/typed-case.ts";

const RUNS = 40;

const char = (one: string): Key => ({ name: "char", char: one });
const strokes = STROKES.map(({ key }) => key).filter((key) => key.length === 1);

const named = [
  ...["enter", "tab", "backtab", "backspace", "delete", "escape", "up", "down", "left", "right"],
  ...["pageup", "pagedown", "home", "end", "interrupt", "unescape"],
] as const;

const anyMessage: fc.Arbitrary<Message> = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom(...strokes).map(char) },
  { weight: 6, arbitrary: fc.constantFrom(..."0123456789 .,+=:@#!;/aclrs").map(char) },
  { weight: 1, arbitrary: fc.string({ unit: "binary", minLength: 1, maxLength: 1 }).map(char) },
  { weight: 6, arbitrary: fc.constantFrom(...named).map((name) => ({ name }) as Key) },
  { weight: 6, arbitrary: fc.constant({ name: "enter" } as Key) },
  { weight: 1, arbitrary: anyText.map((text) => ({ name: "paste", text }) as Key) },
  { weight: 1, arbitrary: fc.integer({ min: 0, max: 60 }).map((seq) => ({ name: "saved", seq }) as const) },
  { weight: 1, arbitrary: fc.constant({ name: "not-saved", why: "the disk is full" } as const) },
  { weight: 1, arbitrary: fc.constant({ name: "clock-stepped", stepMs: 3_600_000 } as const) },
);

const LINES = ["08:40 h 28000", "09:00 b", "09:10 x", "09:11 d 900 a", "09:12 u 100"];
const start = openModel(typed(LINES));

/** Where keys begin: the console as it is opened, and every mode that a stroke opens. */
const BEGINNINGS: Readonly<Record<string, Model>> = {
  "the console": start,
  "an advisory that waits for its answer": press(
    openModel(typed([...LINES, "09:13 s MAP=40"])),
    "!",
    at("09:14"),
  ),
  "a form half filled": press(start, "s4.5\n62\n", at("09:20")),
  "the setup form": press(start, "kA-1\nm\n71\n", at("09:20")),
  "the circuit form": press(start, "j", at("09:20")),
  "a gas": press(start, "g\n7.4\n", at("09:20")),
  "a checklist": press(start, "cb", at("09:20")),
  "the handover": press(start, "y", at("09:20")),
  "the closing": press(start, ".", at("09:20")),
  "a closed case": openModel(typed([...LINES, "09:20 . AB"])),
  help: press(start, "?", at("09:20")),
  "the leave": press(start, "q", at("09:20")),
};

/** One message, with what must hold of every step. */
function stepped(before: Model, message: Message, second: number): Model {
  const { model, effects } = update(before, message, { ...at("10:00"), ms: at("10:00").ms + second * 1000 });
  const [old, now] = [before.file.entries, model.file.entries];
  expect(now.length).toBeGreaterThanOrEqual(old.length);
  for (const [i, entry] of old.entries()) if (now[i] !== entry) throw new Error(`entry ${i + 1} was changed`);
  for (const entry of now.slice(old.length)) expect(entrySchema.safeParse(entry).error).toBeUndefined();
  const saves = effects.flatMap((effect) => (effect.do === "save" ? [effect.file] : []));
  expect(saves).toEqual(now.length > old.length ? [model.file] : []);
  return model;
}

test.each(Object.entries(BEGINNINGS))(
  "500 keys from %s lose no entry, and Esc and ? lead back",
  (name, from) => {
    let written = 0;
    fc.assert(
      fc.property(fc.array(anyMessage, { minLength: 500, maxLength: 500 }), (messages) => {
        const end = messages.reduce(stepped, from);
        written += end.file.entries.length - from.file.entries.length;
        let model = end;
        for (let presses = 0; presses < 3 && model.mode.name !== "plain"; presses++)
          model = update(model, ESCAPE, at("11:00")).model;
        expect(model.mode).toEqual({ name: "plain" });
        expect(model.file).toBe(end.file);
        const help = press(model, "?", at("11:00"));
        expect(help.mode.name).toBe("help");
        expect(press(help, "?", at("11:00")).mode).toEqual({ name: "plain" });
      }),
      { numRuns: RUNS },
    );
    // A closed case takes nothing until somebody reopens it, which random keys hardly do.
    if (name !== "a closed case") expect(written).toBeGreaterThan(RUNS * 5);
  },
);
