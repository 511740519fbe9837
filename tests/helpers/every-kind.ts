/** One valid entry of every kind. */
import { type Draft, entrySchema, type Kind } from "../../src/record/entry.ts";

/** Every kind's name, in the order of the schema. */
export const KINDS: readonly string[] = entrySchema.options.map((option) => option.shape.kind.value);

type DraftOf<K extends Kind> = Extract<Draft, { kind: K }>;

const drafts: { readonly [K in Kind]: DraftOf<K> } = {
  opened: { kind: "opened", operator: "AB", place: "theatre 2" },
  patient: { kind: "patient", number: "17", born: "1956-02-29", sex: "female", weight: 70, height: 170 },
  plan: { kind: "plan", operation: "aortic valve", flowIndex: 2.4, prime: [{ fluid: "prime", ml: 1300 }] },
  team: { kind: "team", people: [{ role: "surgeon", who: "CD" }] },
  circuit: { kind: "circuit", components: [{ component: "oxygenator", lot: "L-1", expires: "2027-01" }] },
  operator: { kind: "operator", operator: "EF", summary: ["on bypass 0:42:10"] },
  span: { kind: "span", what: "cerebral-perfusion", state: "on", way: "antegrade" },
  moment: { kind: "moment", what: "heart-de-aired" },
  flow: { kind: "flow", fraction: 0.75 },
  target: { kind: "target", celsius: 32 },
  reminder: { kind: "reminder", dueAt: "2026-03-04T10:20:00.000+01:00", text: "blood gas", about: "other" },
  check: { kind: "check", checklist: "before-bypass", item: "heparin-given", state: "done" },
  incident: { kind: "incident", text: "chatter in the venous line" },
  note: { kind: "note", text: "surgeon asks for 50 mmHg" },
  acknowledged: { kind: "acknowledged", advisory: "act-low", reason: "more heparin is in" },
  dose: { kind: "dose", state: "whole", ml: 300, route: "right-ostium", pressure: 80, temperature: 5 },
  volume: { kind: "volume", direction: "out", fluid: "urine", bagTotal: 450 },
  level: { kind: "level", ml: 800 },
  drug: { kind: "drug", name: "heparin", amount: 28_000, unit: "[IU]" },
  act: { kind: "act", seconds: 512 },
  readings: { kind: "readings", values: { flow: 4.5, meanPressure: 62 } },
  gas: { kind: "gas", sample: "arterial", values: { ph: 7.38, oxygen: 210 }, convention: "alpha-stat" },
  "reminder-done": { kind: "reminder-done", target: "e11" },
  amend: { kind: "amend", target: "e16", changes: { ml: 350 } },
  void: { kind: "void", target: "e13", reason: "wrong patient" },
  clock: { kind: "clock", stepMs: -3_600_000 },
  closed: {
    kind: "closed",
    operator: "EF",
    completeness: [{ item: "ACT before bypass", state: "present", standard: "3" }],
  },
  reopened: { kind: "reopened", operator: "EF", reason: "urine forgotten" },
};

/** In an order in which they could have been written: what is pointed at comes first. */
export const EVERY_KIND: readonly Draft[] = Object.values(drafts);

/** What every entry carries, for entry number `seq`. */
export const written = (seq: number) => ({
  id: `e${seq}`,
  seq,
  at: "2026-03-04T10:00:00.000+01:00",
  loggedAt: "2026-03-04T10:00:02.000+01:00",
  by: "AB",
  typed: "",
});

/** A valid entry of one kind, as number `seq`, with some fields replaced; `undefined` takes one out. */
export function sampleOf(kind: Kind, replaced: object = {}, seq = 1): object {
  const entry = { ...written(seq), ...drafts[kind], ...replaced };
  return Object.fromEntries(Object.entries(entry).filter(([, value]) => value !== undefined));
}
