/** An entry in words: a short subject and what it says. The log, the entry line and the reports all use these. */
import { clockTimeOf } from "../format/instant.ts";
import { lookUp } from "../format/look-up.ts";
import { fixed, grouped, plain, signed } from "../format/number.ts";
import { harmless, listed } from "../format/text.ts";
import { unitText } from "../format/unit.ts";
import {
  checkItem,
  componentName,
  drugName,
  fluidName,
  solutionName,
  spanName,
  wayName,
} from "../protocol/names.ts";
import type { Protocol } from "../protocol/protocol.ts";
import type { Draft, Entry } from "../record/entry.ts";
import { GAS_VALUES, type Quantity, READINGS } from "../record/quantities.ts";
import type { Route } from "../record/routes.ts";
import type { Fact } from "../record/standing.ts";
import { heparinMilligrams } from "./conversions.ts";
import { toldWords } from "./told-words.ts";

export type Words = { readonly subject: string; readonly says: string };

export const ROUTE_NAMES: Record<Route, string> = {
  root: "aortic root",
  "left-ostium": "left ostium",
  "right-ostium": "right ostium",
  "coronary-sinus": "coronary sinus",
  graft: "graft",
};

/** Subject and text of an entry, one harmless line each. */
export function entryWords(entry: Entry | Draft, protocol: Protocol): Words {
  const { subject, says } = raw(entry, protocol);
  return { subject: harmless(subject), says: harmless(says) };
}

const words = (subject: string, ...parts: (string | undefined | false)[]): Words => ({
  subject,
  says: parts.filter(Boolean).join(" · "),
});

const mL = (ml: number | undefined) => (ml === undefined ? undefined : `${plain(ml)} mL`);

function raw(entry: Entry | Draft, protocol: Protocol): Words {
  switch (entry.kind) {
    case "opened":
      return words("case", "opened", entry.operator && `by ${entry.operator}`, entry.place);
    case "closed":
      return words("case", "closed", `by ${entry.operator}`);
    case "reopened":
      return words("case", "reopened", `by ${entry.operator}`, entry.reason);
    case "patient":
    case "plan":
      return words(entry.kind, ...toldWords(entry));
    case "team":
      return words("team", listed(entry.people.map(({ role, who }) => `${role} ${who}`)));
    case "circuit":
      return words(
        "circuit",
        listed(
          entry.components.map(({ component, lot }) => {
            const name = componentName(component, protocol);
            return lot ? `${name} lot ${lot}` : name;
          }),
        ),
      );
    case "operator":
      return words("pump", `handed to ${entry.operator}`);
    case "span":
      return spanWords(entry, protocol);
    case "moment":
      return words("moment", spanName(entry.what, protocol));
    case "flow":
      return words(
        "flow",
        entry.fraction === undefined
          ? `${plain(entry.litresPerMinute ?? 0)} L/min`
          : fractionText(entry.fraction),
      );
    case "target":
      return words("target", `${plain(entry.celsius)} °C`);
    case "reminder":
      return words("remind", `at ${clockTimeOf(entry.dueAt).slice(0, 5)}`, entry.text);
    case "reminder-done":
      return words("remind", `done (${numberText(entry.target)})`);
    case "check":
      return words("check", CHECK_STATES[entry.state], ...checkItem(entry.checklist, entry.item, protocol));
    case "incident":
      return words("INCIDENT", entry.text);
    case "note":
      return words("note", entry.text);
    case "acknowledged":
      return words("advice", `${entry.advisory.replaceAll("-", " ")} answered`, entry.reason);
    case "dose":
      return words(
        "dose",
        DOSE_STATES[entry.state],
        mL(entry.ml),
        entry.route && ROUTE_NAMES[entry.route],
        entry.pressure !== undefined && `${plain(entry.pressure)} mmHg`,
        entry.temperature !== undefined && `${plain(entry.temperature)} °C`,
        unusual(entry.solution, protocol),
      );
    case "volume":
      return words(
        DIRECTIONS[entry.direction],
        mL(entry.ml) ?? `bag reads ${mL(entry.bagTotal)}`,
        fluidName(entry.direction, entry.fluid, protocol),
        entry.unitNumber && `unit ${entry.unitNumber}`,
        entry.checkedBy && `checked ${entry.checkedBy}`,
      );
    case "level":
      return words("level", mL(entry.ml));
    case "drug":
      return drugWords(entry, protocol);
    case "act":
      return words("ACT", `${plain(entry.seconds)} s`);
    case "readings":
      return words("readings", measured(entry.values, READINGS));
    case "gas":
      return words("gas", entry.sample, measured(entry.values, GAS_VALUES));
    case "amend":
      return words("put right", `${numberText(entry.target)}: ${changesText(entry.changes)}`);
    case "void":
      return words("struck out", numberText(entry.target), entry.reason);
    case "clock":
      return words(
        "clock",
        `system clock stepped by ${signed(entry.stepMs / 1000)} s; the record's time did not`,
      );
    default:
      return entry satisfies never;
  }
}

/** Bypass and clamp are subjects of their own; any other span stands behind the word. */
function spanWords({ what, state, way }: Extract<Draft, { kind: "span" }>, protocol: Protocol): Words {
  const name = spanName(what, protocol);
  const how = way && wayName(what, way, protocol);
  return what === "bypass" || what === "clamp"
    ? words(name, state, how)
    : words("span", `${name} ${state}`, how);
}

/** Heparin and protamine are subjects of their own; any other drug stands behind the word. */
function drugWords(
  { name, amount, unit, route, checkedBy }: Extract<Draft, { kind: "drug" }>,
  protocol: Protocol,
): Words {
  const said = amountText(name, amount, unit, protocol);
  const rest = [route, checkedBy && `checked ${checkedBy}`];
  if (name === "heparin" || name === "protamine") return words(name, said, ...rest);
  return words("drug", `${drugName(name, protocol)} ${said}`, ...rest);
}

const CHECK_STATES = { done: "done", "not-applicable": "not applicable", open: "opened again" } as const;
const DOSE_STATES = { start: "started", "so-far": "so far", end: "ended", whole: "given" } as const;
const DIRECTIONS = { in: "in", out: "out", returned: "returned" } as const;

/** What was set; what made way for it goes without saying. */
function changesText(changes: object): string {
  const set = Object.entries(changes).filter(([, value]) => value !== null);
  return set.length > 0
    ? set.map(changeText).join(", ")
    : `without ${listed(Object.keys(changes).map(fieldName))}`;
}

/** Fields that are told by their unit, as in the entries themselves. */
const TOLD_BY_UNIT: Readonly<Record<string, string>> = {
  ml: "mL",
  seconds: "s",
  litresPerMinute: "L/min",
  celsius: "°C",
  pressure: "mmHg",
  temperature: "°C",
};

function changeText([field, value]: [string, unknown]): string {
  if (field === "at") return `time ${clockTimeOf(String(value))}`;
  if (field === "dueAt") return `due ${clockTimeOf(String(value))}`;
  if (field === "values") return measured(value as object, { ...READINGS, ...GAS_VALUES });
  if (field === "bagTotal") return `bag reads ${plain(Number(value))} mL`;
  if (field === "fraction") return fractionText(Number(value));
  if (field === "route") return lookUp(ROUTE_NAMES, String(value)) ?? String(value);
  const unit = lookUp(TOLD_BY_UNIT, field);
  if (unit !== undefined) return `${plain(Number(value))} ${unit}`;
  return `${fieldName(field)} ${typeof value === "object" ? JSON.stringify(value) : String(value)}`;
}

/** A field's name as words: `checked by`. */
const fieldName = (field: string): string =>
  field.replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** An entry by the number that it has on screens and in reports. */
const numberText = (id: string): string => `#${id.slice(1)}`;

/** How an entry stands now. */
export function standsText({ struck, corrections }: Pick<Fact, "struck" | "corrections">): string {
  if (struck) return "struck out";
  return corrections.length > 0 ? "put right" : "as written";
}

/** Of another solution than the usual one, which goes without saying. */
const unusual = (solution: string | undefined, protocol: Protocol): string | undefined =>
  solution === undefined || solution === protocol.usualSolution
    ? undefined
    : solutionName(solution, protocol);

/** `full`, `3/4 of full`, or a per cent of full. */
export function fractionText(fraction: number): string {
  const known: Record<string, string> = {
    "1": "full",
    "0.75": "3/4 of full",
    "0.5": "1/2 of full",
    "0.25": "1/4 of full",
  };
  return known[String(fraction)] ?? `${fixed(fraction * 100)} % of full`;
}

/** The amount of a drug; heparin in the protocol's unit, with the other said out loud where that is milligrams. */
export function amountText(name: string, amount: number, unit: string, protocol: Protocol): string {
  if (name !== "heparin" || unit !== "[IU]") return `${plain(amount)} ${unitText(unit)}`;
  const iu = `${grouped(amount)} IU`;
  const mg = heparinMilligrams(amount, protocol.coagulation.heparinIuPerMg.value);
  return protocol.shown.heparin === "mg" ? `${plain(mg)} mg = ${iu}` : iu;
}

function measured(values: object, table: Record<string, Quantity>): string {
  const told = Object.entries(table).flatMap(([key, { short, unit, decimals }]) => {
    const value: unknown = Reflect.get(values, key);
    return typeof value === "number" ? [`${short} ${fixed(value, decimals)}${unit === "%" ? " %" : ""}`] : [];
  });
  return told.join(", ");
}
