/** How the run went and how complete its record is: indicators, incidents, what was advised, checklists, completeness. */
import { checkStates, stateOf } from "../figures/checks.ts";
import type { Item } from "../figures/completeness-item.ts";
import { indicatorsOf } from "../figures/indicators.ts";
import { fixed, UNKNOWN } from "../format/number.ts";
import { unitText } from "../format/unit.ts";
import { ofKind } from "../record/standing.ts";
import { type Row, type Section, type Table, table } from "./blocks.ts";
import { clockOf, type Report } from "./report.ts";

/** Indicators; one without a value is not assessable, never met. */
export function indicatorsSection({ run }: Report): Section {
  const rows = indicatorsOf(run).map(({ name, verdict, value, source }): Row => {
    const told = value.value === null ? UNKNOWN : `${fixed(value.value, 1)} ${unitText(value.unit)}`;
    const cells = [name, verdict, told, value.working, source];
    return verdict === "not met" ? { cells, sort: "alert" } : { cells };
  });
  return {
    id: "indicators",
    title: "Quality indicators",
    blocks: [table("Indicators", ["Indicator", "Verdict", ">Value", "From", "~Source"], rows, "None.")],
  };
}

/** Every incident, and every advisory that was answered. */
export function incidentsSection(report: Report): Section {
  const { facts } = report.run.course.record;
  const incidents = ofKind(facts, "incident").map(({ entry, at }) => [
    clockOf(report, at),
    [entry.text, entry.note].filter(Boolean).join("; "),
    entry.by,
  ]);
  const answers = ofKind(facts, "acknowledged").map(({ entry, at }) => [
    clockOf(report, at),
    entry.advisory,
    [entry.reason, entry.note].filter(Boolean).join("; "),
    entry.by,
  ]);
  return {
    id: "incidents",
    title: "Incidents",
    blocks: [
      table("Incidents", [">Time", "What happened", "By"], incidents, "No incident recorded."),
      ...(answers.length > 0
        ? [table("Advice that was answered", [">Time", "Advice", "Answer", "By"], answers, "")]
        : []),
    ],
  };
}

const TICKS = { done: "done", "not-applicable": "not applicable", open: "open" } as const;

/** Every item of every checklist that was ever begun. */
export function checklistsSection({ run, file }: Report): Section {
  const states = checkStates(run.course.record.facts);
  const begun = file.protocol.checklists.filter((list) =>
    list.items.some(({ id }) => stateOf(states, list.id, id) !== "open"),
  );
  const left = file.protocol.checklists.filter((list) => !begun.includes(list)).map(({ name }) => name);
  return {
    id: "checklists",
    title: "Checklists",
    blocks: [
      ...begun.map((list) =>
        table(
          list.name,
          ["Item", "State"],
          list.items.map(({ id, text }): Row => {
            const state = stateOf(states, list.id, id);
            return { cells: [text, TICKS[state]], ...(state === "open" ? { sort: "alert" as const } : {}) };
          }),
          "",
        ),
      ),
      ...(left.length > 0 ? [{ kind: "lines" as const, lines: [`Not begun: ${left.join(", ")}.`] }] : []),
    ],
  };
}

/** The record against the published content of a perfusion record: what is missing one by one, the rest by groups. */
export function completenessSection({ completeness }: Report): Section {
  const missing = completeness.filter(({ state }) => state === "missing");
  return {
    id: "completeness",
    title: "Completeness of the record",
    blocks: [
      table(
        "Missing, of the items of a perfusion record in our own words",
        ["Item", "~Standard"],
        missing.map(({ group, item, standard }) => ({
          cells: [`${group}: ${item}`, standard],
          sort: "alert",
        })),
        "Nothing that was looked for is missing.",
      ),
      groupsTable("In the record", completeness, "present"),
      groupsTable("Not applicable to this case", completeness, "not-applicable"),
    ],
  };
}

function groupsTable(caption: string, items: readonly Item[], state: Item["state"]): Table {
  const those = items.filter((one) => one.state === state);
  const groups = [...new Set(those.map(({ group }) => group))];
  return table(
    caption,
    ["Group", "Items"],
    groups.map((group) => [
      group,
      those
        .filter((one) => one.group === group)
        .map(({ item }) => item)
        .join("; "),
    ]),
    "None.",
  );
}
