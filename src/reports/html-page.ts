/** The frame of every page: needs nothing else, and may run, load and send nothing. */
import { html, type Markup } from "./html-parts.ts";
import { pageStyle } from "./html-style.ts";

// Even if something got past the escaping, nothing on the page may run, load or send.
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

export type Page = {
  readonly title: string;
  /** Stands under the title. */
  readonly lead: string;
  /** Stands at the bottom of every printed page; letters, digits and hyphens only. */
  readonly foot: string;
  readonly contents: readonly { readonly id: string; readonly title: string }[];
  readonly main: readonly Markup[];
};

/** The whole page as text: style within, no script, nothing fetched. */
export const pageText = ({ title, lead, foot, contents, main }: Page): string =>
  html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${POLICY}">
<meta name="color-scheme" content="light dark">
<meta name="robots" content="noindex">
<title>${title}</title>
<style>${{ markup: pageStyle(foot) }}</style>
</head>
<body>
<header>
<h1>${title}</h1>
<p class="lead">${lead}</p>
<nav aria-label="Contents"><ul>${contents.map((part) => html`<li><a href="#${part.id}">${part.title}</a></li>`)}</ul></nav>
</header>
<main>
${main}
</main>
</body>
</html>
`.markup;
