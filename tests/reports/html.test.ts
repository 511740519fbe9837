// The page: all that a report must show, nothing that runs or asks, and what no hostile text can break out of.

import { describe, expect, test } from "vitest";
import { INVENTED } from "../../src/commands/invented/index.ts";
import { CAUTIONS } from "../../src/format/cautions.ts";
import { htmlReport } from "../../src/reports/html.ts";
import { escapedHtml, html } from "../../src/reports/html-parts.ts";
import { pageStyle } from "../../src/reports/html-style.ts";
import { given, typed } from "../helpers/typed-case.ts";
import { caseOf } from "../samples/samples.ts";
import { HOSTILE, hostileCase } from "./hostile.ts";
import { pageFaults } from "./page-faults.ts";
import { CHECKSUM, reported } from "./report-of.ts";

const charts = (page: string): string[] =>
  [...page.matchAll(/<figcaption>(.*?)<\/figcaption>/g)].map(([, title = ""]) => title);

describe.each(INVENTED)("the page of $label", (script) => {
  const page = htmlReport(reported(caseOf(script)));

  test("is sound: headings in order, tables headed, pictures told in words, nothing that runs or asks", () => {
    expect(pageFaults(page)).toEqual([]);
  });

  test("draws the course, flow, pressure, temperatures, oxygen delivery and haematocrit", () => {
    expect(charts(page)).toEqual(
      expect.arrayContaining([
        "Course of the run",
        "pump flow (L/min)",
        "mean arterial pressure (mmHg)",
        "temperatures (°C)",
        "oxygen delivery index (DO2i) (mL/min/m²)",
        "haematocrit (%)",
      ]),
    );
  });

  test("puts all of them on one time axis", () => {
    const axes = [...page.matchAll(/<svg.*?<\/svg>/gs)].map(([svg]) =>
      [...svg.matchAll(/text-anchor="middle">(\d\d:\d\d)</g), ...svg.matchAll(/class="grid" d="M([\d.]+) /g)]
        .map(([, mark]) => mark)
        .filter((mark) => mark?.includes(":") || Number(mark) > 112)
        .join(),
    );
    expect(axes.length).toBeGreaterThan(5);
    expect(new Set(axes).size).toBe(1);
  });

  test("has every entry in its log, the cautions, the checksum and room to sign", () => {
    const numbers = [...page.matchAll(/<th scope="row" class="number">(\d+)<\/th>/g)].map(([, n]) =>
      Number(n),
    );
    const { entries } = caseOf(script);
    expect(entries.filter(({ seq }) => !numbers.includes(seq))).toEqual([]);
    for (const caution of CAUTIONS) expect(page).toContain(escapedHtml(caution));
    expect(page).toContain(CHECKSUM);
    expect(page).toContain('<ul class="signatures">');
  });
});

test("the threshold of oxygen delivery is drawn and named", () => {
  const page = htmlReport(reported(caseOf(INVENTED[0] as (typeof INVENTED)[number])));
  const drawing = page.slice(page.indexOf("oxygen delivery index (DO2i)"));
  expect(drawing).toMatch(/class="limit".*?limit 280 mL\/min\/m²/s);
});

test("a case without a reading has a page that says so", () => {
  const page = htmlReport(reported(typed([])));
  expect(pageFaults(page)).toEqual([]);
  expect(page).toContain("Nothing was measured.");
  expect(page).toContain("No dose recorded.");
});

test("a dose put right shows what it was, and what was struck out is told in words", () => {
  const page = htmlReport(
    reported(typed(["09:00 b", "09:06 d 300", "09:20 z 350", "09:30 u 80", "09:31 z ! wrong bag"])),
  );
  expect(page).toContain("before that: 09:06:00 dose given · 300 mL");
  expect(page).toMatch(/<tr class="struck">.*?STRUCK OUT: 80 mL/);
  expect(page).toContain("wrong bag");
});

test("without names nobody is told, and nobody is asked to sign", () => {
  const file = given(
    typed(["09:00 n Ada is awake"]),
    { kind: "patient", name: "Ada Lovelace", number: "17" },
    "09:01",
  );
  const page = htmlReport(reported(file, { withoutNames: true }));
  expect(page).not.toMatch(/Ada|Lovelace|signatures">/);
  expect(htmlReport(reported(file))).toContain("Ada Lovelace");
});

test.each(HOSTILE)("%s in every text stays text on the page", (...hostile) => {
  const page = htmlReport(reported(hostileCase(hostile)));
  expect(pageFaults(page)).toEqual([]);
  expect(page).not.toMatch(/<(script|img|b )/i);
  expect(page.replaceAll("\n", "")).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}]/u);
});

describe.each(["screen and print, light", "screen, dark"])("the colours of %s", (name) => {
  const sets = [...pageStyle("").matchAll(/:root\{([^}]*)\}/g)].map(([, set = ""]) => set);
  const set = name.endsWith("dark") ? sets[1] : sets[0];
  const colours = new Map(
    [...(set ?? "").matchAll(/--([a-z0-9]+):(#[0-9a-f]{3,6})/g)].map(
      ([, key, value]) => [key, value] as const,
    ),
  );
  const contrast = (one: string, other: string) => {
    const [light = 0, dark = 0] = [one, other]
      .map((key) => brightness(colours.get(key) ?? ""))
      .sort((a, b) => b - a);
    return (light + 0.05) / (dark + 0.05);
  };

  test.each(["page", "tint", "bypass", "clamp"])("let every text be read on %s (4.5 to 1)", (ground) => {
    const texts = ["ink", "quiet", "alert", "l0"];
    expect(texts.filter((text) => contrast(text, ground) < 4.5)).toEqual([]);
  });

  test.each(["page", "bypass", "clamp"])("let every line be seen on %s (3 to 1)", (ground) => {
    expect(["l0", "l1", "l2", "l3", "l4", "alert"].filter((line) => contrast(line, ground) < 3)).toEqual([]);
  });
});

/** Relative luminance, as the guidelines for accessible content (WCAG 2) define it. */
function brightness(colour: string): number {
  const digits =
    colour.length === 4 ? [...colour.slice(1)].map((digit) => digit + digit) : colour.slice(1).match(/../g);
  const [red = 0, green = 0, blue = 0] = (digits ?? []).map((pair) => {
    const part = Number.parseInt(pair, 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

test("a template takes text as text and markup as markup", () => {
  const bold = html`<b>${"<i>"}</b>`;
  expect(html`<p title="${`"'>`}">${bold}${[bold, "&"]}${false}${undefined}${7}</p>`.markup).toBe(
    `<p title="&quot;&#39;&gt;"><b>&lt;i&gt;</b><b>&lt;i&gt;</b>&amp;7</p>`,
  );
});
