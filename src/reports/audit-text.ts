/** An audit as text that fits a page. */
import type { Audit } from "./audit.ts";
import { auditSections, monthTables, rulesSection } from "./audit-sections.ts";
import type { Choice } from "./choose-cases.ts";
import { sectionChunks, TEXT_WIDTH } from "./text.ts";
import { asciiOf } from "./text-ascii.ts";

/** No line of it is longer than `TEXT_WIDTH`. */
export function auditText(audit: Audit, choice: Choice, ascii = false): string {
  const sections = [
    ...auditSections(audit, choice),
    { id: "months", title: "Month by month", blocks: monthTables(audit, true) },
    rulesSection,
  ];
  const body = sections.flatMap(sectionChunks).flatMap(({ lines }) => lines);
  const text = ["AUDIT OF BYPASS RUNS", "=".repeat(TEXT_WIDTH), "", ...body].join("\n").trimEnd();
  return `${ascii ? text.split("\n").map(asciiOf).join("\n") : text}\n`;
}
