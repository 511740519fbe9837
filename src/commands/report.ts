/** `pumpside report`: a case as it is handed on, to standard output or into files of its own. */
import { createHash } from "node:crypto";
import { join } from "node:path";
import { type Outcome, taken } from "../format/outcome.ts";
import { listed } from "../format/text.ts";
import { asOf } from "../record/as-of.ts";
import type { CaseFile } from "../record/case.ts";
import { csvText } from "../reports/csv.ts";
import { csvTable } from "../reports/csv-tables.ts";
import { fhirDocument } from "../reports/fhir-document.ts";
import { figuresJson } from "../reports/figures.ts";
import { CSV_TABLES, type CsvTableName, type Format } from "../reports/formats.ts";
import { htmlReport } from "../reports/html.ts";
import { type Kept, type Report, reportOf } from "../reports/report.ts";
import { textReport } from "../reports/text.ts";
import { caseFaults } from "../store/case-faults.ts";
import type { ReadOnly } from "../store/open-case.ts";
import { bytesOf, caseInBytes } from "../store/read-case-file.ts";
import type { Safe } from "../store/safe.ts";
import { caseNamed, type Place, timeOf } from "./place.ts";
import { CASE_FAULT, complain, DONE, say, WRONG_CALL } from "./speak.ts";
import { writeNew } from "./write-new.ts";

type ReportVerbOptions = Place & {
  readonly as: Format;
  readonly out?: string;
  readonly force?: boolean;
  readonly table?: CsvTableName;
  readonly at?: string;
  /** Commander's way of saying `--without-names`. */
  readonly withoutNames?: boolean;
  readonly keepNotes?: boolean;
  readonly ascii?: boolean;
  readonly pages?: boolean;
};

export async function reportVerb(name: string, options: ReportVerbOptions): Promise<number> {
  const wrong = wrongCall(options);
  if (wrong !== null) return complain(wrong, WRONG_CALL);
  const found = await caseNamed(name, options);
  if (!found.ok) return found.code;
  const { file, kept } = await asKept(found.value);
  const at = timeOf(options.at, file);
  if (!at.ok) return complain(at.fault, WRONG_CALL);
  const report = reportOf(asOf(file, at.value.ms), at.value, { ...options, kept });
  const told = await hand(report, found.value.path, options);
  if (!told.ok) return complain(`"${name}": ${told.fault}`, CASE_FAULT);
  for (const path of told.value) say(path);
  return found.value.recovered === null ? DONE : CASE_FAULT;
}

/** What cannot be meant, in a sentence; `null` for a call that can be answered. */
function wrongCall({ as, table, out, keepNotes, withoutNames }: ReportVerbOptions): string | null {
  if (table !== undefined && as !== "csv") return "--table chooses a table of --as csv: leave it out.";
  if (as === "csv" && table === undefined && out === undefined)
    return `csv is ${CSV_TABLES.length} tables: choose one with --table (${listed(CSV_TABLES, "or")}), or a folder for all of them with --out.`;
  return keepNotes && !withoutNames
    ? "--keep-notes goes with --without-names: add it, or leave both out."
    : null;
}

/** The case in the very bytes that the checksum is of, out of the safe; a damaged file gives what could be recovered, and no checksum. */
async function asKept({
  path,
  file,
  recovered,
  safe,
}: ReadOnly & { readonly safe: Safe }): Promise<{ file: CaseFile; kept: Kept | undefined }> {
  if (recovered !== null) return { file, kept: { checksum: null, seal: undefined, faults: [recovered] } };
  try {
    const { bytes } = await bytesOf(path, safe);
    const read = caseInBytes(bytes);
    if (!read.ok) return { file, kept: undefined };
    const checksum = createHash("sha256").update(bytes).digest("hex");
    return { file: read.value, kept: { checksum, seal: read.value.seal, faults: caseFaults(read.value) } };
  } catch {
    return { file, kept: undefined };
  }
}

/** Writes the files that were asked for and gives their paths, or tells the report on standard output. */
async function hand(
  report: Report,
  casePath: string,
  options: ReportVerbOptions,
): Promise<Outcome<readonly string[]>> {
  const { out, force = false } = options;
  if (out === undefined) {
    process.stdout.write(textOf(report, options, options.table));
    return taken([]);
  }
  const isWhole = options.as === "csv" && options.table === undefined;
  const files = isWhole
    ? CSV_TABLES.map((table) => ({
        path: join(out, `${report.file.id}-${table}.csv`),
        text: textOf(report, options, table),
      }))
    : [{ path: out, text: textOf(report, options, options.table) }];
  for (const { path, text } of files) {
    const written = await writeNew(path, text, { force, never: casePath });
    if (!written.ok) return written;
  }
  return taken(files.map(({ path }) => path));
}

function textOf(
  report: Report,
  { as, ascii, pages }: ReportVerbOptions,
  table: CsvTableName | undefined,
): string {
  switch (as) {
    case "text":
      return textReport(report, { ascii, pages });
    case "html":
      return htmlReport(report);
    case "csv":
      return csvText(csvTable(report, table ?? "entries"));
    case "fhir":
      return jsonText(fhirDocument(report.file, report.at, report.kept?.checksum ?? undefined));
    case "json":
      return jsonText(figuresJson(report.file, report.at));
    default:
      return as satisfies never;
  }
}

const jsonText = (value: object): string => `${JSON.stringify(value, null, 2)}\n`;
