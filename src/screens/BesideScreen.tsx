/** A form with figures beside it: the whole screen, fields on the left, what follows from them on the right. */
import { Box, Text } from "ink";
import type { Beside } from "../console/form.ts";
import type { FormMode, Model } from "../console/model.ts";
import { formContext, valuesSoFar } from "../console/read-form.ts";
import { openForm } from "../console/update-form.ts";
import type { Run } from "../figures/run.ts";
import type { Instant } from "../format/instant.ts";
import { EntryLine, entryRows, saidBy } from "./EntryLine.tsx";
import { FormPanel } from "./FormPanel.tsx";
import { column, cutTo, fitting } from "./fit.ts";
import { Rule } from "./Rule.tsx";
import { tilesOf } from "./Timers.tsx";
import { TitleBar } from "./TitleBar.tsx";
import { wrapped } from "./wrapped.ts";

type Props = {
  readonly model: Model;
  readonly mode: FormMode;
  readonly run: Run;
  readonly now: Instant;
  readonly columns: number;
  readonly rows: number;
};

const FIELD_WIDTH = 34;
/** Title and rule. */
const ROWS_TAKEN = 2;

export function BesideScreen({ model, mode, run, now, columns, rows }: Props) {
  const { form, fields } = openForm(model, mode);
  const beside = form.beside?.(valuesSoFar(fields, mode.texts), formContext(model.file, mode.started)) ?? [];
  const left = FIELD_WIDTH * (columns >= 120 ? 2 : 1);
  const said = saidBy(model, columns);
  const panelRows = Math.max(
    1,
    rows - ROWS_TAKEN - (run.course.phase === "before" ? 0 : 1) - entryRows(model, said),
  );
  const pages = pagesOf(beside, columns - left - 2, panelRows);
  const page = Math.min(mode.page, pages.length - 1);
  const more = pages.length > 1 ? ` · figures ${page + 1} of ${pages.length}, PgDn turns over` : "";
  return (
    <Box flexDirection="column" height={rows} width={columns}>
      <TitleBar model={model} run={run} now={now} columns={columns} />
      {run.course.phase === "before" ? null : <ClockRow run={run} columns={columns} />}
      <Rule title={`${form.title}${more}`} columns={columns} />
      <Box height={panelRows}>
        <Box width={left}>
          <FormPanel fields={fields} mode={mode} columns={left} rows={panelRows} wide={FIELD_WIDTH} />
        </Box>
        <Box flexDirection="column" width={columns - left}>
          {(pages[page] ?? []).map(({ text, bold }, place) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows of a page have no name but their place.
            <Text key={place} wrap="truncate" bold={bold} dimColor={!bold}>
              {text}
            </Text>
          ))}
        </Box>
      </Box>
      <EntryLine model={model} said={said} columns={columns} />
    </Box>
  );
}

/** The clocks stay in view once there are any. */
function ClockRow({ run, columns }: { run: Run; columns: number }) {
  const clocks = tilesOf(run).map(({ label, value, detail }) => `${label.toLowerCase()} ${value} ${detail}`);
  return (
    <Text wrap="truncate">{` ${fitting(clocks, columns - 2, (text) => text.length + 3).join(" · ")}`}</Text>
  );
}

type Row = { readonly text: string; readonly bold: boolean };

/** Figures a page: a row for the value and rows for its working, never torn over two pages. */
export function pagesOf(
  beside: readonly Beside[],
  columns: number,
  rows: number,
): readonly (readonly Row[])[] {
  const pages: Row[][] = [[]];
  for (const { name, value, working } of beside) {
    const head = { text: `${column(name, Math.max(1, columns - value.length - 2))} ${value}`, bold: true };
    const block: Row[] = [
      head,
      ...wrapped(working, columns - 3)
        .slice(0, 3)
        .map((line) => ({ text: `  ${cutTo(line, columns - 3)}`, bold: false })),
    ];
    const last = pages.at(-1) as Row[];
    if (last.length > 0 && last.length + block.length > rows) pages.push(block);
    else last.push(...block);
  }
  return pages;
}
