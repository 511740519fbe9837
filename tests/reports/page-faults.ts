/** What is wrong with a page, as far as its text tells: for machines that have no browser to ask. */

type Tag = {
  readonly name: string;
  readonly isEnd: boolean;
  readonly attributes: ReadonlyMap<string, string>;
};

const VOID = new Set(["meta", "link", "br", "path", "rect", "circle"]);
/** Elements and attributes the page is made of: anything else came out of a text. */
const ELEMENTS = new Set([
  ...[
    "html",
    "head",
    "meta",
    "title",
    "style",
    "body",
    "header",
    "main",
    "nav",
    "section",
    "h1",
    "h2",
    "p",
    "a",
  ],
  ...[
    "ul",
    "li",
    "dl",
    "div",
    "dt",
    "dd",
    "span",
    "strong",
    "figure",
    "figcaption",
    "svg",
    "g",
    "desc",
    "path",
  ],
  ...["rect", "text", "table", "caption", "thead", "tbody", "tr", "th", "td"],
]);
const ATTRIBUTES = new Set([
  ...[
    "lang",
    "charset",
    "name",
    "content",
    "http-equiv",
    "class",
    "id",
    "href",
    "scope",
    "role",
    "aria-label",
  ],
  ...["aria-labelledby", "viewbox", "d", "x", "y", "width", "height", "text-anchor"],
]);

/** A sentence for each fault. */
export function pageFaults(page: string): string[] {
  const tags = tagsOf(page);
  return [
    ...nestingFaults(tags),
    ...strangers(tags),
    ...headingFaults(tags),
    ...tableFaults(page),
    ...pictureFaults(page),
    ...headFaults(page, tags),
  ];
}

function tagsOf(page: string): Tag[] {
  const withoutStyle = page.replace(/(<style>).*?(<\/style>)/s, "$1$2");
  return [...withoutStyle.matchAll(/<(\/?)([a-z][a-z0-9]*)((?:\s+[\w-]+(?:="[^"]*")?)*)\s*\/?>/gi)].map(
    ([, end, name = "", attributes = ""]) => ({
      name: name.toLowerCase(),
      isEnd: end === "/",
      attributes: new Map(
        [...attributes.matchAll(/([\w-]+)(?:="([^"]*)")?/g)].map(([, key = "", value = ""]) => [
          key.toLowerCase(),
          value,
        ]),
      ),
    }),
  );
}

function nestingFaults(tags: readonly Tag[]): string[] {
  const open: string[] = [];
  for (const { name, isEnd } of tags) {
    if (VOID.has(name)) continue;
    if (!isEnd) open.push(name);
    else if (open.pop() !== name) return [`</${name}> closes what it did not open`];
  }
  return open.map((name) => `<${name}> is never closed`);
}

const strangers = (tags: readonly Tag[]): string[] =>
  tags.flatMap(({ name, attributes }) => [
    ...(ELEMENTS.has(name) ? [] : [`there is a <${name}>`]),
    ...[...attributes.keys()].filter((key) => !ATTRIBUTES.has(key)).map((key) => `<${name}> has ${key}`),
  ]);

function headingFaults(tags: readonly Tag[]): string[] {
  const levels = tags
    .filter(({ name, isEnd }) => !isEnd && /^h\d$/.test(name))
    .map(({ name }) => Number(name[1]));
  const jumps = levels.filter((level, i) => level > (levels[i - 1] ?? 0) + 1);
  return [
    ...(levels.filter((level) => level === 1).length === 1 ? [] : ["there is not one main heading"]),
    ...jumps.map((level) => `a heading jumps to level ${level}`),
  ];
}

const tableFaults = (page: string): string[] =>
  [...page.matchAll(/<table.*?<\/table>/gs)].flatMap(([table]) => [
    ...(/<caption>[^<]+<\/caption>/.test(table) ? [] : ["a table has no caption"]),
    ...(/<th(?![^>]*scope="(?:col|row)")[^>]*>/.test(table.replaceAll("<thead>", ""))
      ? ["a head has no scope"]
      : []),
    ...(/<th scope="col"[^>]*><\/th>/.test(table) ? ["a column has no name"] : []),
  ]);

const pictureFaults = (page: string): string[] => [
  ...[...page.matchAll(/<svg.*?<\/svg>/gs)]
    .filter(([svg]) => !/role="img" aria-labelledby="[^"]+"><title id="[^"]+">[^<]+<\/title><desc/.test(svg))
    .map(() => "a picture has no name"),
  ...[...page.matchAll(/<figure>.*?<\/figure>/gs)]
    .filter(([figure]) => !/class="beside">.*\w/s.test(figure))
    .map(() => "a picture is not told in words"),
];

function headFaults(page: string, tags: readonly Tag[]): string[] {
  const ids = tags.flatMap(({ attributes }) => attributes.get("id") ?? []);
  const links = tags.flatMap(({ attributes }) => attributes.get("href") ?? []);
  return [
    ...(/^<!doctype html>\n<html lang="en">/.test(page) ? [] : ["the language is not told"]),
    ...(/<title>[^<]+<\/title>/.test(page) ? [] : ["there is no title"]),
    ...(page.includes("default-src &#39;none&#39;") ? [] : ["nothing forbids the page to load or run"]),
    ...(/url\(|@import/i.test(page.match(/<style>.*?<\/style>/s)?.[0] ?? "")
      ? ["the style loads something"]
      : []),
    ...ids.filter((id, i) => ids.indexOf(id) !== i).map((id) => `two parts are called ${id}`),
    ...links.filter((link) => !ids.includes(link.slice(1))).map((link) => `a link leads nowhere: ${link}`),
  ];
}
