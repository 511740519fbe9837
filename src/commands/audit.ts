/** `pumpside audit`: a department's figures over a folder of cases. */
import { resolve } from "node:path";
import { type Audit, auditOf } from "../reports/audit.ts";
import { auditCsv } from "../reports/audit-csv.ts";
import { auditHtml } from "../reports/audit-html.ts";
import { auditText } from "../reports/audit-text.ts";
import { type Choice, chosen } from "../reports/choose-cases.ts";
import type { AuditFormat } from "../reports/formats.ts";
import { casesWithProgress } from "./cases.ts";
import { dayFault } from "./days.ts";
import { folderOf, type Place } from "./place.ts";
import { CASE_FAULT, complain, DONE, say, WRONG_CALL } from "./speak.ts";
import { writeNew } from "./write-new.ts";

type AuditOptions = Place &
  Choice & {
    readonly as?: AuditFormat;
    readonly out?: string;
    readonly force?: boolean;
    readonly ascii?: boolean;
  };

export async function auditVerb(folder: string | undefined, options: AuditOptions): Promise<number> {
  const { out, force = false } = options;
  const wrong = dayFault(options);
  if (wrong !== null) return complain(wrong, WRONG_CALL);
  const read = await casesWithProgress(folder === undefined ? folderOf(options) : resolve(folder), options);
  if (!read.ok) return read.code;
  const cases = read.value;
  if (cases.length === 0)
    return complain("no case is here: name a folder with cases in it, or give one with --dir.", WRONG_CALL);
  const audit = auditOf(chosen(cases, options));
  const text = textOf(audit, options);
  if (out === undefined) process.stdout.write(text);
  else {
    const written = await writeNew(out, text, { force, never: "" });
    if (!written.ok) return complain(written.fault, CASE_FAULT);
    say(written.value);
  }
  const { length } = audit.damaged;
  return length === 0
    ? DONE
    : complain(`damaged cases, named in the audit and left out of it: ${length}.`, CASE_FAULT);
}

function textOf(audit: Audit, { as = "text", ascii, since, until }: AuditOptions): string {
  switch (as) {
    case "text":
      return auditText(audit, { since, until }, ascii);
    case "csv":
      return auditCsv(audit);
    case "html":
      return auditHtml(audit, { since, until });
    default:
      return as satisfies never;
  }
}
