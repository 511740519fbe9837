/** Markup that cannot be broken out of: whatever is put into a template is text, unless it is markup already. */
import { harmless } from "../format/text.ts";

export type Markup = { readonly markup: string };
type Part = string | number | Markup | readonly Part[] | false | undefined;

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** Text without control characters or direction marks, as it may stand in an element or between quotes. */
export const escapedHtml = (text: string): string =>
  harmless(text).replace(/[&<>"']/g, (sign) => ENTITIES[sign] as string);

/** A tag for templates: `html\`<p>${anything}</p>\``. */
export const html = (texts: TemplateStringsArray, ...parts: readonly Part[]): Markup => ({
  markup: texts.reduce((all, text, i) => all + text + (i < parts.length ? shown(parts[i]) : ""), ""),
});

function shown(part: Part): string {
  if (part === undefined || part === false) return "";
  if (typeof part === "string") return escapedHtml(part);
  if (typeof part === "number") return String(part);
  if ("markup" in part) return part.markup;
  return part.map(shown).join("");
}
