/** Advisories about heparin, ACT and protamine. */
import { stopwatch } from "../../format/duration.ts";
import { fixed, plain } from "../../format/number.ts";
import { lastOf } from "../../record/standing.ts";
import { IN_PRIME } from "../coagulation.ts";
import { intervalsOf, openInterval } from "../spans.ts";
import { type Advisory, bypassOn, isAbove, lastNumber } from "./advisory.ts";

const SUCKERS_OFF = "Barlow C, Bedside notebook, cardiopulmonary bypass";

const noHeparin: Advisory = {
  id: "no-heparin",
  reads: [],
  says(run) {
    const bypass = bypassOn(run);
    const protamine = run.coagulation.protamine.at(-1);
    const heparin = run.coagulation.heparin.filter(({ at }) => at >= (protamine?.at ?? 0));
    if (!bypass || heparin.some(({ entry }) => entry.route !== IN_PRIME)) return null;
    const which = heparin.length === 0 ? "no heparin is recorded" : "only heparin in the prime is recorded";
    return {
      text: `On bypass, and ${which}${protamine ? " since protamine was given" : ""}.`,
      priority: "high",
      since: Math.max(bypass.from, protamine?.at ?? 0),
      after: lastNumber(bypass.on, heparin.at(-1), protamine),
    };
  },
};

const actUnder: Advisory = {
  id: "act-under",
  reads: ["coagulation.actForBypass"],
  says(run) {
    const bypass = bypassOn(run);
    const fact = lastOf(run.course.record.facts, "act");
    if (!bypass || !fact || !run.act || run.act.met) return null;
    return {
      text: `On bypass, and the last ACT of ${plain(run.act.seconds)} s is under ${plain(run.act.target)} s.`,
      source: run.course.protocol.coagulation.actForBypass.source,
      priority: "high",
      since: Math.max(bypass.from, fact.at),
      after: lastNumber(bypass.on, fact),
    };
  },
};

const actOld: Advisory = {
  id: "act-old",
  reads: ["coagulation.actRecheck"],
  says(run) {
    const bypass = bypassOn(run);
    if (!bypass) return null;
    const { value, source } = run.course.protocol.coagulation.actRecheck;
    const fact = lastOf(run.course.record.facts, "act");
    if (!fact || !run.act)
      return {
        text: "On bypass, and no ACT is recorded.",
        source,
        priority: "high",
        since: bypass.from,
        after: lastNumber(bypass.on),
      };
    if (run.now <= run.act.due) return null;
    return {
      text: `On bypass, and the last ACT is ${stopwatch(run.act.age)} old: one is due every ${plain(value)} min.`,
      source,
      priority: "medium",
      since: Math.max(bypass.from, run.act.due),
      after: lastNumber(bypass.on, fact),
    };
  },
};

const suckersOn: Advisory = {
  id: "suckers-after-protamine",
  reads: [],
  says(run) {
    const suckers = openInterval(intervalsOf(run.course.spans, "suckers"));
    const heparin = run.coagulation.heparin.at(-1);
    const protamine = run.coagulation.protamine.find(({ at }) => at >= (heparin?.at ?? 0));
    if (!suckers || !protamine) return null;
    return {
      text: "The suckers are on, and protamine has been started.",
      source: SUCKERS_OFF,
      priority: "high",
      since: Math.max(suckers.from, protamine.at),
      after: lastNumber(suckers.on, protamine),
    };
  },
};

const protamineOnBypass: Advisory = {
  id: "protamine-on-bypass",
  reads: [],
  says(run) {
    const bypass = bypassOn(run);
    const protamine = run.coagulation.protamine.findLast(({ at }) => bypass && at >= bypass.from);
    if (!protamine) return null;
    return {
      text: "Protamine is recorded on bypass.",
      priority: "high",
      since: protamine.at,
      after: lastNumber(protamine),
    };
  },
};

const protamineOver: Advisory = {
  id: "protamine-over",
  reads: ["coagulation.protamineCap"],
  says(run) {
    const { protamineGiven, protamineMost } = run.coagulation;
    const last = run.coagulation.protamine.at(-1);
    if (!last || protamineGiven.value === null || protamineMost.value === null) return null;
    if (!isAbove(protamineGiven.value, protamineMost.value)) return null;
    const { value, source } = run.course.protocol.coagulation.protamineCap;
    return {
      text: `Protamine of ${plain(protamineGiven.value)} mg in all is over ${fixed(protamineMost.value)} mg, ${plain(value)} mg for each 100 IU of heparin.`,
      source,
      priority: "medium",
      since: last.at,
      after: lastNumber(last),
    };
  },
};

export const coagulationAdvisories: readonly Advisory[] = [
  noHeparin,
  actUnder,
  actOld,
  suckersOn,
  protamineOnBypass,
  protamineOver,
];
