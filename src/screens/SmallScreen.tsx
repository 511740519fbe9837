/** The run in a terminal that is too small: what is saved, the entry line, the timers and a sentence. */
import { isUnsaved, type Model, typingIn } from "../console/model.ts";
import { asked, meaning } from "../console/open-line.ts";
import type { Run } from "../figures/run.ts";
import { harmless } from "../format/text.ts";
import { endOf } from "./fit.ts";
import { PlainRows, tooSmall } from "./PlainRows.tsx";
import type { Size } from "./size.ts";
import { tilesOf } from "./Timers.tsx";
import { savedText } from "./TitleBar.tsx";

export function SmallScreen({ model, run, size }: { model: Model; run: Run; size: Size }) {
  const lines = [firstRow(model, size.columns - 1), ...saidBy(model), ...tileRows(run), run.course.phase];
  return <PlainRows lines={[...lines, tooSmall(size)]} size={size} />;
}

/** The clocks, a row each. */
export const tileRows = (run: Run): string[] =>
  tilesOf(run).map(({ label, value, detail }) => `${label.toLowerCase()} ${value}  ${detail}`);

/** So that even a single row shows what is saved and the end of what is being typed. */
function firstRow(model: Model, width: number): string {
  const saved = savedText(model);
  const typing = typingIn(model.mode);
  if (typing === null) return saved;
  const label = model.mode.name === "line" ? model.mode.stroke : asked(model).label;
  return `${saved} > ${endOf(harmless(`${label} ${typing.text}`), width - saved.length - 3)}`;
}

/** What Enter would write or why it would not, or what the console last said, and a failed save. */
function saidBy(model: Model): string[] {
  const trouble =
    isUnsaved(model) && model.trouble !== null ? `not saved: ${model.trouble}; trying again` : "";
  return [meaning(model).text || asked(model).asks || (model.notice ?? ""), trouble].filter(
    (text) => text !== "",
  );
}
