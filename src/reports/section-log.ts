/** The whole log in the order of happening: every entry as it stands, with each correction beneath it. */
import { entryWords } from "../figures/entry-words.ts";
import { msOf } from "../format/instant.ts";
import { corrected } from "../record/correcting.ts";
import type { Entry } from "../record/entry.ts";
import { type Correction, type Fact, isLate } from "../record/standing.ts";
import { type Row, type Section, table } from "./blocks.ts";
import { clockOf, type Report } from "./report.ts";

/** One table for the whole case. */
export function logSection(report: Report): Section {
  const { written } = report.run.course.record;
  const under = correctionsByTarget(written);
  const rows = written
    .filter(({ entry }) => !isCorrection(entry))
    .toSorted((a, b) => a.at - b.at || a.entry.seq - b.entry.seq)
    .flatMap((fact) => [rowOf(report, fact), ...beneath(report, fact, under)]);
  return {
    id: "log",
    title: "The whole log",
    blocks: [
      table(
        "Every entry, by the time at which it happened; corrections stand beneath what they put right",
        [">No.", ">Time", "By", "What", "Said"],
        rows,
        "No entry.",
      ),
    ],
  };
}

const isCorrection = (entry: Entry): entry is Correction => entry.kind === "amend" || entry.kind === "void";

function correctionsByTarget(written: readonly Fact[]): ReadonlyMap<string, Fact[]> {
  const under = new Map<string, Fact[]>();
  for (const fact of written)
    if (isCorrection(fact.entry))
      under.set(fact.entry.target, [...(under.get(fact.entry.target) ?? []), fact]);
  return under;
}

function rowOf(report: Report, fact: Fact): Row {
  const { entry, at, struck } = fact;
  const { subject, says } = entryWords(entry, report.file.protocol);
  const late = isLate(fact) ? `written ${clockOf(report, msOf(entry.loggedAt))}` : undefined;
  const said = [struck ? "STRUCK OUT:" : "", says].filter(Boolean).join(" ");
  const cells = [
    String(entry.seq),
    clockOf(report, at),
    entry.by,
    subject,
    [said, entry.note, late].filter(Boolean).join("; "),
  ];
  const sort = struck ? "struck" : entry.kind === "incident" ? "alert" : undefined;
  return sort ? { cells, sort } : { cells };
}

/** The corrections of an entry, and those of the corrections themselves, in the order of writing. */
function beneath(report: Report, fact: Fact, under: ReadonlyMap<string, Fact[]>): Row[] {
  return (under.get(fact.entry.id) ?? []).flatMap((correction) => [
    correctionRow(report, correction, fact),
    ...beneath(report, correction, under),
  ]);
}

function correctionRow(report: Report, { entry, struck }: Fact, target: Fact): Row {
  const correction = entry as Correction;
  const { subject, says } = entryWords(correction, report.file.protocol);
  const said = [
    says,
    correction.kind === "amend" && `before that: ${wordsBefore(report, correction, target)}`,
    correction.note,
    struck && "this correction was itself struck out",
  ];
  return {
    cells: [
      String(entry.seq),
      clockOf(report, msOf(entry.loggedAt)),
      entry.by,
      subject,
      said.filter(Boolean).join("; "),
    ],
    sort: "beneath",
  };
}

/** When and what the entry said before a correction. */
function wordsBefore(report: Report, correction: Correction, { logged, corrections }: Fact): string {
  const before = corrections
    .filter(({ seq }) => seq < correction.seq)
    .reduce((now, one) => (one.kind === "amend" ? corrected(now, one.changes) : now), logged);
  const { subject, says } = entryWords(before, report.file.protocol);
  return `${clockOf(report, msOf(before.at))} ${subject} ${says}`.trim();
}
