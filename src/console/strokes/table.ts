/** The stroke table: the single source for handling, hint bar, help, `pumpside keys` and the README. */
import { PHASES } from "../../figures/phase.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import { circuit } from "../forms/circuit.ts";
import { gas, readings } from "../forms/measured.ts";
import { setup } from "../forms/setup.ts";
import type { Stroke, ViewStroke } from "../stroke.ts";
import { acknowledge } from "./acknowledge.ts";
import { closing } from "./closing.ts";
import { act, heparin, protamine } from "./coagulation.ts";
import { dose } from "./dose.ts";
import { drug } from "./drug.ts";
import { handover } from "./handover.ts";
import { mark } from "./mark.ts";
import { flow, reminder, target } from "./orders.ts";
import { bypass, clamp } from "./span.ts";
import { level, returned, urine, volumeIn, volumeOut } from "./volume.ts";
import { incident, note } from "./words.ts";

const VIEWS: readonly ViewStroke[] = [
  {
    key: "c",
    id: "checklists",
    name: "checklists",
    short: "checks",
    opens: "checklists",
    takes:
      "a letter opens a list; Enter ticks an item, n is not applicable, u opens it again · from a script: c b identity",
    likely: ["before", "weaning"],
  },
  {
    key: "z",
    id: "put-right",
    name: "put right",
    short: "put right",
    opens: "put-right",
    takes:
      "picks the last entry (arrows or #12 pick another): a new amount, a new time @10:42, or ! and a reason to strike it out",
    likely: PHASES,
  },
  {
    key: "/",
    id: "find",
    name: "find a stroke",
    short: "find",
    opens: "find",
    takes: "part of a name",
    likely: [],
  },
  { key: "?", id: "help", name: "help", short: "help", opens: "help", takes: "nothing", likely: PHASES },
  {
    key: "tab",
    id: "panel",
    name: "next panel",
    short: "panel",
    opens: "panel",
    takes: "nothing",
    likely: [],
  },
  {
    key: "q",
    id: "leave",
    name: "leave",
    short: "leave",
    opens: "leave",
    takes: "Enter: the case stays open and resumes",
    likely: [],
  },
];

export const STROKES: readonly Stroke[] = [
  bypass,
  clamp,
  dose,
  heparin,
  protamine,
  act,
  flow,
  target,
  volumeIn,
  urine,
  volumeOut,
  returned,
  level,
  drug,
  readings,
  gas,
  mark,
  reminder,
  acknowledge,
  incident,
  note,
  handover,
  closing,
  setup,
  circuit,
  ...VIEWS,
];

/** The strokes with the keys a protocol gives them. */
export function strokesOf(protocol: Protocol): readonly Stroke[] {
  const { keys } = protocol;
  if (!keys) return STROKES;
  return STROKES.map((stroke) => ({ ...stroke, key: keys[stroke.id] ?? stroke.key }));
}

/** The stroke on a key; `undefined` where the protocol has none there. */
export const strokeFor = (key: string, protocol: Protocol): Stroke | undefined =>
  strokesOf(protocol).find((stroke) => stroke.key === key);

/** The strokes whose name, key or line holds what is looked for. */
export function findStrokes(query: string, protocol: Protocol): readonly Stroke[] {
  const wanted = query.trim().toLowerCase();
  const inName = strokesOf(protocol).filter(({ name }) => name.toLowerCase().includes(wanted));
  const elsewhere = strokesOf(protocol).filter(
    (stroke) => !inName.includes(stroke) && stroke.takes.toLowerCase().includes(wanted),
  );
  return [...inName, ...elsewhere];
}
