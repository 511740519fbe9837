/** The run screen: clocks, balances, the log's end, the entry line and the hints, always in view. */
import { Box, Text } from "ink";
import { useContext } from "react";
import type { LineMode, Model } from "../console/model.ts";
import type { EntryStroke } from "../console/stroke.ts";
import { strokeFor } from "../console/strokes/table.ts";
import { openForm } from "../console/update-form.ts";
import { type Run, readRun } from "../figures/run.ts";
import type { Instant } from "../format/instant.ts";
import { AdviceRows } from "./AdviceRows.tsx";
import { Balances } from "./Balances.tsx";
import { BalancesPanel } from "./BalancesPanel.tsx";
import { BesideScreen } from "./BesideScreen.tsx";
import { ChecklistPanel } from "./ChecklistPanel.tsx";
import { Choices, choiceRows } from "./Choices.tsx";
import { type Look, LookContext } from "./chart-dots.ts";
import { DueLine } from "./DueLine.tsx";
import { EntryLine, entryRows, saidBy } from "./EntryLine.tsx";
import { FormPanel, fieldWidth } from "./FormPanel.tsx";
import { HelpScreen } from "./HelpScreen.tsx";
import { HintBar } from "./HintBar.tsx";
import { LivePanel } from "./LivePanel.tsx";
import { Log } from "./Log.tsx";
import { PlanLine } from "./PlanLine.tsx";
import { QualityPanel } from "./QualityPanel.tsx";
import { Rule } from "./Rule.tsx";
import { ShownPanel } from "./ShownPanel.tsx";
import { SmallScreen } from "./SmallScreen.tsx";
import { SpansPanel } from "./SpansPanel.tsx";
import { drawnRows, roomFor, type Size } from "./size.ts";
import { Timers } from "./Timers.tsx";
import { TitleBar } from "./TitleBar.tsx";
import { TrendsPanel, trendsTitle } from "./TrendsPanel.tsx";

export function RunScreen({ model, now, size }: { model: Model; now: Instant; size: Size }) {
  const room = roomFor(size);
  const look = useContext(LookContext);
  const { columns } = size;
  const rows = drawnRows(size);
  const run = readRun(model.file, now.ms);
  if (room === "small") return <SmallScreen model={model} run={run} size={size} />;
  if (model.mode.name === "help") {
    return <HelpScreen model={model} scroll={model.mode.scroll} columns={columns} rows={rows} />;
  }
  if (model.mode.name === "form" && openForm(model, model.mode).form.beside) {
    return <BesideScreen model={model} mode={model.mode} run={run} now={now} columns={columns} rows={rows} />;
  }
  const choices = choicesFor(model, run, now);
  const said = saidBy(model, columns);
  const large = room === "large";
  const free = Math.max(1, rows - rowsTaken(large) - entryRows(model, said));
  const panelRows = free - choiceRows(choices, columns, free);
  return (
    <Box flexDirection="column" height={rows} width={columns}>
      <TitleBar model={model} run={run} now={now} columns={columns} />
      <PlanLine course={run.course} columns={columns} />
      {large ? <Text> </Text> : null}
      <Timers run={run} columns={columns} big={large} />
      {large ? <Text> </Text> : null}
      <Balances run={run} columns={columns} />
      <DueLine run={run} columns={columns} />
      <AdviceRows model={model} run={run} columns={columns} rows={adviceRows(large)} />
      <Rule title={titleOf(model, look)} columns={columns} />
      <Panel model={model} run={run} now={now} columns={columns} rows={panelRows} />
      <Choices choices={choices} columns={columns} most={free} />
      <EntryLine model={model} said={said} columns={columns} />
      <HintBar phase={run.course.phase} protocol={run.course.protocol} columns={columns} />
    </Box>
  );
}

/** Title, plan, three of timers, three of balances, what is due, rule, hints. */
const ROWS_TAKEN = 11;

const adviceRows = (large: boolean): number => (large ? 5 : 2);

/** Rows beside panel and entry line: large digits take six more, and a space above and below them. */
const rowsTaken = (large: boolean): number => ROWS_TAKEN + (large ? 8 : 0) + adviceRows(large);

/** What the panel shows just now. */
function titleOf(model: Model, look: Look): string {
  const { mode, panel, file } = model;
  if (mode.name === "form") return openForm(model, mode).form.title;
  if (mode.name === "checklist")
    return file.protocol.checklists.find(({ id }) => id === mode.list)?.name ?? "checklists";
  if (mode.name === "put-right") return "log";
  if (mode.name === "line") {
    const stroke = openStroke(mode, file.protocol);
    if (stroke && shownBy(model).length > 0) return stroke.name;
  }
  return panel === "trends" ? trendsTitle(model, look) : panel;
}

function choicesFor(model: Model, run: Run, now: Instant) {
  const { mode, file } = model;
  if (mode.name !== "line") return [];
  return openStroke(mode, file.protocol)?.choices?.({ run, at: now }, mode.text) ?? [];
}

/** What the open line has to be read before it is confirmed, as it stood at its first key: numbers in it stay put. */
function shownBy({ mode, file }: Model): readonly string[] {
  if (mode.name !== "line") return [];
  return (
    openStroke(mode, file.protocol)?.shows?.({ run: readRun(file, mode.started.ms), at: mode.started }) ?? []
  );
}

const openStroke = ({ stroke }: LineMode, protocol: Model["file"]["protocol"]): EntryStroke | undefined => {
  const found = strokeFor(stroke, protocol);
  return found?.opens === "line" ? found : undefined;
};

const FIGURE_PANELS = { live: LivePanel, balances: BalancesPanel, quality: QualityPanel, spans: SpansPanel };

function Panel({
  model,
  run,
  now,
  columns,
  rows,
}: {
  model: Model;
  run: Run;
  now: Instant;
  columns: number;
  rows: number;
}) {
  const { panel, scroll, mode } = model;
  if (mode.name === "form") {
    const { fields } = openForm(model, mode);
    return <FormPanel fields={fields} mode={mode} columns={columns} rows={rows} wide={fieldWidth(fields)} />;
  }
  const lines = shownBy(model);
  if (lines.length > 0) return <ShownPanel lines={lines} columns={columns} rows={rows} scroll={scroll} />;
  if (mode.name === "checklist")
    return <ChecklistPanel course={run.course} mode={mode} columns={columns} rows={rows} />;
  const showsLog = panel === "log" || mode.name === "put-right";
  if (!showsLog && panel === "trends") {
    const { window } = model;
    return (
      <TrendsPanel
        run={run}
        window={window}
        offset={now.offset}
        columns={columns}
        rows={rows}
        page={scroll}
      />
    );
  }
  if (!showsLog) {
    const Figures = FIGURE_PANELS[panel as keyof typeof FIGURE_PANELS];
    return <Figures run={run} columns={columns} rows={rows} scroll={scroll} offset={now.offset} />;
  }
  return (
    <Log
      written={run.course.record.written}
      protocol={run.course.protocol}
      rows={rows}
      scroll={scroll}
      columns={columns}
      picked={mode.name === "put-right" ? mode.target : undefined}
    />
  );
}
