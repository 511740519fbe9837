/** The report as one page that needs nothing else: no script, no request, to be read, printed and kept. */
import { sectionMarkup } from "./html-blocks.ts";
import { chartsMarkup } from "./html-charts.ts";
import { pageText } from "./html-page.ts";
import { dayAndClock, type Report } from "./report.ts";
import { stateText } from "./section-head.ts";
import { openingSections, sectionsAfter } from "./sections.ts";

/** The report as one page that needs nothing from elsewhere. */
export function htmlReport(report: Report): string {
  const { file } = report;
  const opening = openingSections(report);
  const after = sectionsAfter(report);
  return pageText({
    title: `Perfusion record: ${file.label}`,
    lead: `${dayAndClock(report, report.at.ms)} · ${stateText(report)}`,
    foot: `perfusion record ${file.id}`,
    contents: [...opening, { id: "charts", title: "The run in pictures" }, ...after],
    main: [...opening.map(sectionMarkup), chartsMarkup(report), ...after.map(sectionMarkup)],
  });
}
