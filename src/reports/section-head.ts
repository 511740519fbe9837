/** The head of a report and its summary: which case, whose, and what came of it. */
import { surfaceOf } from "../figures/body-surface.ts";
import { fixed, plain, UNKNOWN } from "../format/number.ts";
import { unitText } from "../format/unit.ts";
import type { EntryOf } from "../record/entry.ts";
import { ofKind } from "../record/standing.ts";
import { type Block, pairs, type Section, type Signatures } from "./blocks.ts";
import { figureWords, valueText } from "./figure-words.ts";
import { figuresOf } from "./figures.ts";
import { clockOf, dayAndClock, type Report, zoneOf } from "./report.ts";
import { wholeText } from "./section-working.ts";
import { amountOf } from "./shown-values.ts";

/** Whether what is told is final. */
export const stateText = ({ run }: Pick<Report, "run">): string =>
  run.course.closedAt === null ? "still open: this report is preliminary" : "closed";

/** Which case this is, and when the report was made. */
export function headSection(report: Report): Section {
  const { file, run } = report;
  const opened = ofKind(run.course.record.facts, "opened")[0];
  return {
    id: "case",
    title: "Case",
    blocks: [
      pairs(
        ["case", file.label === file.id ? file.id : `${file.label} (${file.id})`],
        ["operation", run.course.plan.operation ?? UNKNOWN],
        ["opened", opened ? dayAndClock(report, opened.at) : UNKNOWN],
        ...(opened?.entry.place ? [["place", opened.entry.place] as const] : []),
        ["state", stateText(report)],
        ...(report.kept?.faults.length ? [["FILE NOT WHOLE", wholeText(report.kept)] as const] : []),
        ["protocol", file.protocol.name],
        ["report made", `${dayAndClock(report, report.at.ms)}; all times are ${zoneOf(report)}`],
        ...(report.hasNames ? [] : [["names", "left out of this report"] as const]),
      ),
    ],
  };
}

/** The patient as told before the run. */
export function patientSection({ run: { course }, hasNames }: Report): Section {
  const { patient } = course;
  const surface = surfaceOf(course);
  return {
    id: "patient",
    title: "Patient",
    blocks: [
      pairs(
        ...(hasNames ? identity(patient) : []),
        ["age", amountOf(patient.ageYears, "years")],
        ["sex", patient.sex ?? UNKNOWN],
        ["weight, height", `${amountOf(patient.weight, "kg")}, ${amountOf(patient.height, "cm")}`],
        ["body surface", surface.value === null ? UNKNOWN : `${fixed(surface.value, 2)} m²`],
        ["allergies", patient.allergies || UNKNOWN],
        [
          "blood group",
          [patient.bloodGroup || UNKNOWN, patient.antibodies && `antibodies: ${patient.antibodies}`]
            .filter(Boolean)
            .join(", "),
        ],
        ["infection", patient.infection || UNKNOWN],
        ["diagnosis", patient.diagnosis || UNKNOWN],
        ...(patient.history ? [["history", patient.history] as const] : []),
        ["before the run", before(patient)],
      ),
    ],
  };
}

type Patient = Report["run"]["course"]["patient"];

const identity = ({ number, name, born }: Patient) => [
  ["local number", number || UNKNOWN] as const,
  ...(name ? [["name", name] as const] : []),
  ...(born ? [["born", born] as const] : []),
];

const BEFORE: readonly (readonly [field: string, name: string, unit: string])[] = [
  ["haemoglobin", "Hb", "g/dL"],
  ["haematocrit", "Hct", "%"],
  ["platelets", "platelets", "10*9/L"],
  ["creatinine", "creatinine", "umol/L"],
  ["sodium", "Na", "mmol/L"],
  ["potassium", "K", "mmol/L"],
  ["glucose", "glucose", "mmol/L"],
];

function before(patient: Patient): string {
  const told = BEFORE.flatMap(([field, name, unit]) => {
    const value = patient[field];
    return typeof value === "number" ? [`${name} ${plain(value)} ${unitText(unit)}`] : [];
  });
  return told.join(", ") || UNKNOWN;
}

const SUMMED = [
  ...[
    "bypassTime",
    "arrestTime",
    "circulatoryArrestTime",
    "reperfusionTime",
    "arrestGiven",
    "fluidIn",
    "out",
  ],
  ...["net", "returned", "leftInPump", "netToPatient", "heparinTotal", "heparinPerKg", "protamineGiven"],
  ...["lastAct", "deliveryLowest", "deliveryBelowMinutes", "urineRate"],
];

/** The figures people ask for first, what is missing, and room to sign. */
export function summarySection(report: Report): Section {
  const figures = figuresOf(report.file, report.at);
  const told = SUMMED.flatMap((name) => {
    const figure = figures.find((one) => one.name === name);
    return figure ? [[figureWords(name).label, valueText(name, figure)] as const] : [];
  });
  const blocks: Block[] = [
    pairs(
      ...told,
      ["doses of arrest solution", String(report.run.course.doses.length)],
      ["incidents", incidents(report)],
      ["record", complete(report)],
    ),
  ];
  return { id: "summary", title: "Summary", blocks: [...blocks, ...signatures(report)] };
}

function incidents({ run }: Report): string {
  const count = ofKind(run.course.record.facts, "incident").length;
  return count === 0 ? "none recorded" : String(count);
}

function complete({ completeness }: Report): string {
  const asked = completeness.filter(({ state }) => state !== "not-applicable");
  const there = asked.filter(({ state }) => state === "present").length;
  return `${there} of ${asked.length} items`;
}

/** A line for everybody who ran the pump; none where names are left out. */
function signatures(report: Report): Signatures[] {
  const people = operators(report).map(({ who, from }) => `${who}, at the pump from ${from}`);
  return report.hasNames && people.length > 0 ? [{ kind: "signatures", people }] : [];
}

/** Who ran the pump from when on, in the order of taking over. */
export function operators(report: Report): readonly { who: string; from: string }[] {
  return report.run.course.record.written.flatMap(({ entry, at, struck }) => {
    const takes = entry.kind === "opened" || entry.kind === "operator" || entry.kind === "reopened";
    if (!takes || struck) return [];
    return [{ who: (entry as EntryOf<"opened">).operator, from: clockOf(report, at) }];
  });
}
