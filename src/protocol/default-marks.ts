/** The milestones and spans that the shipped protocols offer after `m`. Bypass and clamp have keys of their own. */
import type { Mark } from "./marks.ts";

const moment = (letter: string, id: string, name: string): Mark => ({ letter, id, name, sort: "moment" });
const span = (letter: string, id: string, name: string): Mark => ({ letter, id, name, sort: "span" });

export const defaultMarks: Mark[] = [
  moment("1", "sign-in", "sign in"),
  moment("2", "time-out", "time out"),
  moment("3", "sign-out", "sign out"),
  moment("i", "skin-incision", "skin incision"),
  moment("h", "chest-open", "chest open"),
  moment("b", "baseline-samples", "baseline samples taken"),
  moment("n", "arterial-cannula-in", "arterial cannula in"),
  moment("t", "arterial-line-tested", "arterial line tested"),
  moment("j", "venous-cannula-in", "venous cannula in"),
  moment("r", "prime-displaced", "prime displaced by own blood"),
  moment("q", "heart-fibrillates", "heart fibrillates"),
  moment("f", "heart-filled", "heart filled"),
  moment("d", "heart-de-aired", "heart de-aired"),
  moment("z", "shock", "shock"),
  moment("y", "heart-beats", "heart beats"),
  moment("o", "venous-line-out", "venous line out"),
  moment("e", "cannulas-out", "all cannulas out"),
  moment("w", "chest-closed", "chest closed"),
  span("s", "suckers", "suckers"),
  span("v", "vent", "vent"),
  span("l", "ventilation", "lungs ventilated"),
  span("k", "vacuum", "vacuum on the reservoir"),
  span("p", "pacing", "pacing"),
  span("x", "partial-clamp", "partial clamp"),
  span("a", "circulatory-arrest", "circulatory arrest"),
  {
    ...span("c", "cerebral-perfusion", "cerebral perfusion"),
    ways: [
      { letter: "a", id: "antegrade", name: "antegrade" },
      { letter: "r", id: "retrograde", name: "retrograde" },
    ],
  },
  {
    ...span("u", "ultrafiltration", "ultrafiltration"),
    ways: [
      { letter: "c", id: "conventional", name: "conventional" },
      { letter: "m", id: "modified", name: "modified" },
      { letter: "z", id: "zero-balance", name: "zero-balance" },
    ],
  },
];
