/** The review screen: a case read back as summary, timeline or trends. Nothing here can change the case. */
import { Box, Text } from "ink";
import { isPath, type Review, reviewedAt, VIEWS, viewOf } from "../console/review.ts";
import { LEAVING, OTHER_CASES, READ_AGAIN, REVIEW_KEYS, type ReviewKey } from "../console/review-keys.ts";
import type { Within } from "../console/review-modes.ts";
import { chosenPlace, shownRows } from "../console/review-timeline.ts";
import { type Run, readRun } from "../figures/run.ts";
import { fromIso } from "../format/instant.ts";
import { harmless } from "../format/text.ts";
import type { CaseFile } from "../record/case.ts";
import { column, cutTo, endOf, fitting } from "./fit.ts";
import { KeyRow, keyWidth } from "./KeyRow.tsx";
import { rowText } from "./Log.tsx";
import { PlainRows, tooSmall } from "./PlainRows.tsx";
import { PlanLine } from "./PlanLine.tsx";
import { ReviewHistory } from "./ReviewHistory.tsx";
import { ReviewSummary } from "./ReviewSummary.tsx";
import { ReviewTimeline } from "./ReviewTimeline.tsx";
import { ReviewTrends } from "./ReviewTrends.tsx";
import { tileRows } from "./SmallScreen.tsx";
import { drawnRows, roomFor, type Size } from "./size.ts";
import { wrapped } from "./wrapped.ts";

/** Title, plan, what is said, keys. */
const ROWS_TAKEN = 4;

export function ReviewScreen({ review, size }: { review: Review; size: Size }) {
  const { columns } = size;
  const rows = drawnRows(size);
  const { file } = review;
  const run = file && readRun(file, reviewedAt(file));
  if (roomFor(size) === "small") return <SmallReview review={review} run={run} size={size} />;
  return (
    <Box flexDirection="column" height={rows} width={columns}>
      <Title review={review} columns={columns} />
      {run ? <PlanLine course={run.course} columns={columns} /> : <Text> </Text>}
      <Box flexDirection="column" height={rows - ROWS_TAKEN}>
        {file && run ? (
          <View review={{ ...review, file }} run={run} columns={columns} rows={rows - ROWS_TAKEN} />
        ) : (
          <Absent review={review} columns={columns} />
        )}
      </Box>
      <Said review={review} columns={columns} />
      <KeyRow keys={keysFor(review, columns)} />
    </Box>
  );
}

/** In the place of a case: that it is being read, or which it is and why it cannot be. */
function Absent({ review: { shelf, place, reading, notice }, columns }: { review: Review; columns: number }) {
  const here = shelf[place];
  const path = here && isPath(here) ? harmless(here.path) : "";
  const said = reading ? ["Reading …"] : wrapped(notice ?? "", columns - 2);
  return [path, ...said].map((row, line) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: rows of a sentence have no name but their place.
    <Text key={line} wrap="truncate">{` ${cutTo(row, columns - 2)}`}</Text>
  ));
}

type ViewProps = {
  readonly review: Within;
  readonly run: Run;
  readonly columns: number;
  readonly rows: number;
};

function View({ review, run, columns, rows }: ViewProps) {
  const { mode, file, page } = review;
  const offset = offsetOf(file);
  switch (mode.name) {
    case "summary":
      return <ReviewSummary run={run} offset={offset} columns={columns} rows={rows} page={page} />;
    case "timeline":
    case "search":
    case "kinds":
      return <ReviewTimeline review={review} columns={columns} rows={rows} />;
    case "trends":
      return <ReviewTrends review={review} run={run} offset={offset} columns={columns} rows={rows} />;
    case "history":
      return <ReviewHistory file={file} of={mode.of} page={mode.page} columns={columns} rows={rows} />;
    default:
      return mode satisfies never;
  }
}

/** Clock times of a case are those of the place where its last entry was written. */
const offsetOf = ({ entries }: CaseFile): number => fromIso(entries.at(-1)?.at ?? "")?.offset ?? 0;

/** The case, the views with the present one in brackets, and which case of how many. */
function Title({ review, columns }: { review: Review; columns: number }) {
  const { shelf, place, file, mode } = review;
  const here = viewOf(mode);
  const views = VIEWS.map((view) => (view === here ? `[${view}]` : ` ${view} `)).join(" ");
  const which = shelf.length > 1 ? ` ${OTHER_CASES} case ${place + 1} of ${shelf.length} ` : "";
  const label = column(` REVIEW · ${harmless(file?.label ?? "")}`, columns - views.length - which.length - 2);
  return <Text inverse wrap="truncate">{`${label} ${views}${which} `}</Text>;
}

/** What is typed into a search, else what there is to say. */
function Said({ review: { mode, file, notice, reading }, columns }: { review: Review; columns: number }) {
  if (file === null) return <Text> </Text>;
  if (mode.name === "search") {
    const points = [...mode.text];
    const before = endOf(points.slice(0, mode.cursor).join(""), columns - 12);
    return (
      <Text wrap="truncate">
        <Text bold color="cyan">
          {" search: "}
        </Text>
        {before}
        <Text inverse>{points[mode.cursor] ?? " "}</Text>
        {points.slice(mode.cursor + 1).join("")}
      </Text>
    );
  }
  return <Text wrap="truncate">{` ${cutTo(notice ?? (reading ? "Reading …" : ""), columns - 2)}`}</Text>;
}

/** The keys of the mode, as many as fit whole; the way out is always among them. */
export function keysFor(
  { mode, file }: Pick<Review, "mode" | "file">,
  columns: number,
): readonly ReviewKey[] {
  if (file === null) return [READ_AGAIN, LEAVING];
  const always = mode.name === "search" || mode.name === "kinds" ? [] : [LEAVING];
  const room = columns - always.reduce((sum, one) => sum + keyWidth(one), 0);
  return [...fitting(REVIEW_KEYS[mode.name], room, keyWidth), ...always];
}

/** In a terminal that is too small: the clocks, and the log from the chosen entry on. */
function SmallReview({ review, run, size }: { review: Review; run: Run | null; size: Size }) {
  const { file, timeline } = review;
  const title = `REVIEW · ${harmless(file?.label ?? "")} · arrows move · q leaves`;
  if (!file || !run) return <PlainRows lines={[title, review.notice ?? ""]} size={size} />;
  const rows = shownRows(file, timeline).slice(Math.max(0, chosenPlace(file, timeline)));
  const list = rows.slice(0, size.rows).map(({ fact }) => rowText(fact, file.protocol));
  return <PlainRows lines={[title, ...tileRows(run), tooSmall(size)]} list={list} size={size} />;
}
