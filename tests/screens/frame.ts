// One frame of the console as rows of text, drawn at a given size by Ink's own layout.

import { renderToString } from "ink";
import { createElement } from "react";
import type { App } from "../../src/console/app.ts";
import { type Model, openModel } from "../../src/console/model.ts";
import type { Instant } from "../../src/format/instant.ts";
import type { CaseFile } from "../../src/record/case.ts";
import { Screen, type View } from "../../src/screens/Root.tsx";
import type { Size } from "../../src/screens/size.ts";

// Colours and weights go, and so do the spaces behind the last word of a row.
// biome-ignore lint/suspicious/noControlCharactersInRegex: terminals begin their sequences with Esc.
const STYLE = /\x1b\[[0-9;]*m/g;

/** The rows of a frame. */
export const frameOf = (view: View, size: Size): string[] =>
  renderToString(createElement(Screen, { view, size }), { columns: size.columns })
    .replace(STYLE, "")
    .split("\n")
    .map((row) => row.trimEnd());

export const viewOf = (app: App, now: Instant): View => ({ app, now, folder: "/cases" });

/** What leaving leads to. */
export const HOME = { protocols: ["adult", "paediatric"] };

/** The run screen with a model. */
export const runView = (model: Model, now: Instant): View =>
  viewOf({ screen: "run", model, home: HOME }, now);

/** The run screen with a case on which nothing is being typed. */
export const quietView = (file: CaseFile, now: Instant): View => runView(openModel(file), now);
