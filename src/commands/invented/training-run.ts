/** An invented case to be typed along: each order as it is said in the room, and the stroke that answers it. */
import { adultProtocol } from "../../protocol/adult.ts";
import type { Script } from "./script.ts";

/** `at` is when the order is said; `type` is one way to answer it. */
export type OrderStep = { readonly at: string; readonly says: string; readonly type: string };

export type TrainingScript = Omit<Script, "steps"> & { readonly steps: readonly OrderStep[] };

const steps: readonly OrderStep[] = [
  { at: "10:00:05", says: "Surgeon: heparin please, 28 000 units.", type: "h28000" },
  { at: "10:00:45", says: "Anaesthetist: the ACT is 495.", type: "a495" },
  { at: "10:01:20", says: "Surgeon: go on bypass.", type: "b" },
  { at: "10:01:45", says: "Protocol: the reservoir holds, go to full flow.", type: "ffull" },
  { at: "10:02:15", says: "Surgeon: cool to 32.", type: "t32" },
  { at: "10:02:50", says: "Surgeon: clamp is on.", type: "x" },
  { at: "10:03:05", says: "Surgeon: start the arrest solution, into the root.", type: "da" },
  { at: "10:04:10", says: "Surgeon: stop. The solution pump reads 600 in all.", type: "d600" },
  { at: "10:04:50", says: "Anaesthetist: 40 of urine.", type: "u40" },
  { at: "10:05:25", says: "Surgeon: that was 200 more, into the left ostium.", type: "d200l" },
  { at: "10:06:05", says: "Protocol: note the level; the reservoir stands at 900.", type: "l900" },
  { at: "10:06:40", says: "Anaesthetist: give 250 of crystalloid.", type: "v250c" },
  { at: "10:07:20", says: "Protocol: the ACT is back, 442.", type: "a442" },
  { at: "10:07:45", says: "Anaesthetist: then 5000 of heparin into the pump.", type: "h5000" },
  { at: "10:08:30", says: "Surgeon: warm to 36.5.", type: "t36.5" },
  { at: "10:09:20", says: "Surgeon: clamp is off.", type: "x" },
  { at: "10:10:10", says: "Surgeon: three quarters.", type: "f3/4" },
  { at: "10:10:30", says: "Surgeon: half.", type: "f1/2" },
  { at: "10:10:50", says: "Surgeon: a quarter.", type: "f1/4" },
  { at: "10:11:15", says: "Surgeon: come off.", type: "b" },
  { at: "10:11:45", says: "Surgeon: give a hundred.", type: "r100" },
  { at: "10:12:30", says: "Surgeon: protamine, 280 milligrams.", type: "p280" },
  { at: "10:13:10", says: "Anaesthetist: the ACT is 128.", type: "a128" },
  { at: "10:13:45", says: "Protocol: note what is left in the pump, 700.", type: "l700" },
];

export const trainingRun: TrainingScript = {
  id: "training-run",
  label: "Training run (invented)",
  protocol: adultProtocol,
  operator: "TR",
  place: "training room",
  start: { ms: Date.UTC(2026, 2, 18, 9, 0), offset: 60 },
  steps,
};
