/** The start screen: cautions for a newcomer, the cases, and the keys. */
import { Box, Text } from "ink";
import { type CaseLine, newCaseSays, START_KEYS, type Start } from "../console/start.ts";
import { CAUTIONS } from "../format/cautions.ts";
import { clockTime, clockTimeOf, dayOf, type Instant } from "../format/instant.ts";
import { harmless } from "../format/text.ts";
import { column, cutTo, endOf, fitting } from "./fit.ts";
import { KeyRow, keyWidth } from "./KeyRow.tsx";
import { PlainRows } from "./PlainRows.tsx";
import { Rule } from "./Rule.tsx";
import { drawnRows, roomFor, type Size } from "./size.ts";
import { wrapped } from "./wrapped.ts";

export function StartScreen({
  start,
  now,
  size,
  folder,
}: {
  start: Start;
  now: Instant;
  size: Size;
  folder: string;
}) {
  const { columns } = size;
  const rows = drawnRows(size);
  if (roomFor(size) === "small")
    return <PlainRows lines={smallLines(start)} list={start.cases?.map(caseText)} size={size} />;
  const notice = (start.asking && newCaseSays(start.asking)) ?? start.notice;
  const said = notice ? wrapped(notice, columns - 3) : [" "];
  const listRows = Math.max(1, rows - ROWS_TAKEN - said.length);
  return (
    <Box flexDirection="column" height={rows} width={columns}>
      <Box justifyContent="space-between">
        <Text>
          <Text bold inverse>
            {" pumpside "}
          </Text>
          <Text dimColor>{cutTo("  the record of a bypass run", Math.max(1, columns - 24))}</Text>
        </Text>
        <Text bold>{clockTime(now)}</Text>
      </Box>
      <Text
        wrap="truncate"
        dimColor
      >{` cases in ${cutTo(harmless(folder), Math.max(1, columns - 12))}`}</Text>
      <Rule title="cases" columns={columns} />
      <Box flexDirection="column" height={listRows}>
        <Cases start={start} columns={columns} rows={listRows} />
      </Box>
      {said.map((row) => (
        <Text key={row} wrap="truncate">{` ${cutTo(row, columns - 2)}`}</Text>
      ))}
      <Asking start={start} columns={columns} />
      <Hints start={start} columns={columns} />
    </Box>
  );
}

/** Title, folder, rule, what is asked, keys. */
const ROWS_TAKEN = 5;

/** What is being typed or was said first, then the chosen case and the keys. */
function smallLines({ cases, chosen, asking, notice }: Start): string[] {
  const keys = asking ? ASKING_KEYS : START_KEYS;
  const picked = cases?.[chosen];
  return [
    asking ? `initials, label > ${harmless(asking.text)}` : (notice ?? ""),
    picked ? `▸ ${caseText(picked)}` : cases === null ? "Reading the folder …" : "No case here yet.",
    keys.map(([key, what]) => `${key} ${what}`).join(" · "),
    ...(cases?.length === 0 ? CAUTIONS : []),
  ].filter((line) => line !== "");
}

function Cases({ start, columns, rows }: { start: Start; columns: number; rows: number }) {
  const { cases, chosen } = start;
  if (cases === null) return <Text dimColor> Reading the folder …</Text>;
  if (cases.length === 0) return <Welcome columns={columns} />;
  const first = Math.max(0, Math.min(chosen - Math.floor(rows / 2), cases.length - rows));
  return cases.slice(first, first + rows).map((one, place) => (
    <Text key={one.path} wrap="truncate" inverse={first + place === chosen}>
      {column(`${first + place === chosen ? "▸" : " "}${caseText(one)}`, columns - 1)}
    </Text>
  ));
}

/** What a newcomer sees: what it is, the cautions, and three ways to begin. */
function Welcome({ columns }: { columns: number }) {
  const ways = [
    "n makes a new case.",
    "d plays an invented case in the console; s shows the sample cases for review.",
    "Nothing is saved here yet.",
  ];
  return (
    <Box flexDirection="column">
      {[...CAUTIONS, " ", ...ways]
        .flatMap((line) => wrapped(line, columns - 4))
        .map((line, place) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: fixed text that never changes places.
          <Text key={place} wrap="truncate">{`  ${line}`}</Text>
        ))}
    </Box>
  );
}

function caseText({ id, label, opened, entries, state, operation, fault, damage }: CaseLine): string {
  if (fault !== undefined) return `${id}  CANNOT BE READ: ${harmless(fault)}`;
  const when = opened ? `${dayOf(opened)} ${clockTimeOf(opened).slice(0, 5)}` : "";
  const damaged = damage === undefined ? "" : "DAMAGED  ";
  return `${when}  ${column(state ?? "", 6)} ${String(entries ?? 0).padStart(5)} entries  ${damaged}${harmless(label ?? id)}${operation ? `  ${harmless(operation)}` : ""}`;
}

function Asking({ start: { asking }, columns }: { start: Start; columns: number }) {
  if (!asking) return <Text> </Text>;
  return (
    <Text wrap="truncate">
      <Text bold color="cyan">
        {`▸ ${cutTo(harmless(asking.protocol), 16)}: your initials, a label (no names): `}
      </Text>
      {endOf(harmless(asking.text), columns - 60)}
      <Text inverse> </Text>
    </Text>
  );
}

const ASKING_KEYS = [
  ["Enter", "makes the case"],
  ["Tab", "another protocol"],
  ["Esc", "back"],
] as const;

function Hints({ start, columns }: { start: Start; columns: number }) {
  const keys = start.asking ? ASKING_KEYS : START_KEYS;
  return <KeyRow keys={fitting(keys, columns, keyWidth)} />;
}
