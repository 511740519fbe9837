/** Reports of cases as the tests make them: at the moment of the last entry, with a checksum of noughts. */
import { msOf } from "../../src/format/instant.ts";
import type { CaseFile } from "../../src/record/case.ts";
import { type Report, type ReportOptions, reportOf } from "../../src/reports/report.ts";

export const CHECKSUM = "0123456789abcdef".repeat(4);

export const reported = (file: CaseFile, options: ReportOptions = {}): Report =>
  reportOf(
    file,
    { ms: msOf(file.entries.at(-1)?.loggedAt ?? ""), offset: 60 },
    { kept: { checksum: CHECKSUM, seal: undefined, faults: [] }, ...options },
  );
