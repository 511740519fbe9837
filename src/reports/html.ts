/** The report as one page that needs nothing else: no script, no request, to be read, printed and kept. */
import type { Section } from "./blocks.ts";
import { sectionMarkup } from "./html-blocks.ts";
import { chartsMarkup } from "./html-charts.ts";
import { html, type Markup } from "./html-parts.ts";
import { pageStyle } from "./html-style.ts";
import { dayAndClock, type Report } from "./report.ts";
import { stateText } from "./section-head.ts";
import { openingSections, sectionsAfter } from "./sections.ts";

// Even if something got past the escaping, nothing on the page may run, load or send.
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

export function htmlReport(report: Report): string {
  const { file } = report;
  const opening = openingSections(report);
  const after = sectionsAfter(report);
  const title = `Perfusion record: ${file.label}`;
  const style: Markup = { markup: pageStyle(`perfusion record ${file.id}`) };
  const page = html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${POLICY}">
<meta name="color-scheme" content="light dark">
<meta name="robots" content="noindex">
<title>${title}</title>
<style>${style}</style>
</head>
<body>
<header>
<h1>${title}</h1>
<p class="lead">${dayAndClock(report, report.at.ms)} · ${stateText(report)}</p>
<nav aria-label="Contents"><ul>${contents(opening, after)}</ul></nav>
</header>
<main>
${opening.map(sectionMarkup)}
${chartsMarkup(report)}
${after.map(sectionMarkup)}
</main>
</body>
</html>
`;
  return page.markup;
}

const contents = (opening: readonly Section[], after: readonly Section[]): Markup[] =>
  [...opening, { id: "charts", title: "The run in pictures" }, ...after].map(
    ({ id, title }) => html`<li><a href="#${id}">${title}</a></li>`,
  );
