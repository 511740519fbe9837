/** h p a: heparin, protamine, ACT. */

import { IN_PRIME } from "../../figures/coagulation.ts";
import { amountText } from "../../figures/entry-words.ts";
import { heparinDose } from "../../figures/planned-doses.ts";
import { lookUp } from "../../format/look-up.ts";
import { fixed, plain } from "../../format/number.ts";
import { andThen, type Outcome, refused, taken } from "../../format/outcome.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import type { Draft } from "../../record/entry.ts";
import { notThat, numberAndUnit, numberWithin } from "../amounts.ts";
import type { EntryStroke } from "../stroke.ts";

/** IU of heparin from an amount in the protocol's unit, or in the unit that is said: `28000`, `28k`, `280mg`. */
export function readHeparin(words: readonly string[], protocol: Protocol): Outcome<number> {
  const typed = words.join("");
  const found = numberAndUnit(typed);
  const perMg = protocol.coagulation.heparinIuPerMg.value;
  const usual = protocol.shown.heparin === "mg" ? perMg : 1;
  const factor = found && lookUp({ "": usual, iu: 1, k: 1000, kiu: 1000, mg: perMg }, found.unit);
  const example = protocol.shown.heparin === "mg" ? "280 (mg)" : "28000 (IU)";
  if (!found || !factor)
    return refused(`${notThat(typed, "an amount of heparin")}: type such as ${example}, 28k or 280mg.`);
  const iu = found.value * factor;
  return iu > 1_000_000
    ? refused(`${plain(iu)} IU is more than a million units: type an amount such as ${example}.`)
    : taken(iu);
}

export const heparin: EntryStroke = {
  key: "h",
  id: "heparin",
  short: "heparin",
  name: "heparin",
  opens: "line",
  takes: "amount in the protocol's unit; p behind it when it goes into the prime",
  likely: ["before", "on bypass", "arrested"],
  example: "h 28000",
  asks: ({ run: { course, coagulation } }) => {
    const { protocol, patient, plan } = course;
    const { heparinIuPerMg } = protocol.coagulation;
    const unit = protocol.shown.heparin === "mg" ? `mg at ${plain(heparinIuPerMg.value)} IU/mg` : "IU";
    const told = (iu: number) => amountText("heparin", iu, "[IU]", protocol);
    const { heparinFirst, heparinTotal } = coagulation;
    if (heparinFirst.value !== null) return `${unit} (so far ${told(heparinTotal.value ?? 0)})`;
    const dose = heparinDose(patient, plan, protocol.coagulation);
    return dose.value === null ? unit : `${unit} (${dose.working} = ${told(dose.value)})`;
  },
  read: ({ words }, { run }) => {
    const primed = words.length > 1 && /^p(rime)?$/i.test(words.at(-1) ?? "");
    return andThen(
      readHeparin(primed ? words.slice(0, -1) : words, run.course.protocol),
      (amount): Outcome<Draft> =>
        taken({
          kind: "drug",
          name: "heparin",
          amount,
          unit: "[IU]",
          ...(primed ? { route: IN_PRIME } : {}),
        }),
    );
  },
};

/** Milligrams of protamine, up to 5000: `280`, `280mg`. */
export const readProtamine = (words: readonly string[]): Outcome<number> =>
  numberWithin(words.join("") || undefined, "an amount of protamine", "mg", 0, 5000, "280");

export const protamine: EntryStroke = {
  key: "p",
  id: "protamine",
  short: "protamine",
  name: "protamine",
  opens: "line",
  takes: "amount in mg",
  likely: ["after"],
  example: "p 280",
  asks: ({ run: { coagulation } }) =>
    coagulation.protamineSuggested.value === null
      ? "mg"
      : `mg (by ratio ${fixed(coagulation.protamineOnFirst.value)} on the first heparin, ${fixed(coagulation.protamineOnTotal.value)} on all of it)`,
  read: ({ words }) =>
    andThen(
      readProtamine(words),
      (amount): Outcome<Draft> => taken({ kind: "drug", name: "protamine", amount, unit: "mg" }),
    ),
};

/** An ACT in seconds, from 1 to 9999: `480`. */
export const readActSeconds = (words: readonly string[]): Outcome<number> =>
  numberWithin(words.join("") || undefined, "an ACT", "s", 1, 9999, "480");

export const act: EntryStroke = {
  key: "a",
  id: "act",
  short: "ACT",
  name: "ACT",
  opens: "line",
  takes: "seconds",
  likely: ["before", "on bypass", "arrested", "reperfusing", "after"],
  example: "a 512",
  asks: ({ run: { course } }) => {
    const { actForCannulation, actForBypass } = course.protocol.coagulation;
    const first = course.phase === "before" ? `${plain(actForCannulation.value)} for cannulation, ` : "";
    return `seconds (target ${first}${plain(actForBypass.value)}${first && " for bypass"})`;
  },
  read: ({ words }) =>
    andThen(readActSeconds(words), (seconds): Outcome<Draft> => taken({ kind: "act", seconds })),
};
