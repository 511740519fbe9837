/** Bypass, clamp, since dose and ACT: the four things that are asked all the time. */
import { Box, Text } from "ink";
import type { Run } from "../figures/run.ts";
import type { Timer } from "../figures/timers.ts";
import { dueText, minutesText, stopwatch } from "../format/duration.ts";
import { plain, UNKNOWN } from "../format/number.ts";
import { BigDigits } from "./BigDigits.tsx";
import { cutTo } from "./fit.ts";

type Tile = {
  readonly label: string;
  readonly value: string;
  readonly detail: string;
  /** Whether it runs, or is in force, now. */
  readonly live: boolean;
  /** Whether the detail wants a look. */
  readonly late: boolean;
};

/** The tiles in the order in which they stand. */
export const tilesOf = (run: Run): readonly Tile[] => [
  bypassTile(run),
  clampTile(run),
  doseTile(run),
  actTile(run),
];

/** Eightieths of the width for each tile: the clamp's and the ACT's details are longest. */
const SHARES = [18, 22, 18, 22] as const;
/** Hours, minutes and seconds in big digits, with the space before them; the rest is for the ACT. */
const BIG = 30;

const widthsIn = (columns: number, big: boolean): readonly number[] =>
  big && columns < (BIG / SHARES[0]) * 80
    ? [BIG, BIG, BIG, columns - 3 * BIG]
    : SHARES.map((share) => Math.floor((columns * share) / 80));

export function Timers({ run, columns, big }: { run: Run; columns: number; big: boolean }) {
  const widths = widthsIn(columns, big);
  return (
    <Box>
      {tilesOf(run).map((tile, place) => (
        <Box key={tile.label} flexDirection="column" width={widths[place]}>
          <Text dimColor={!tile.live} bold={tile.live}>
            {`${tile.live ? "▶" : " "} ${tile.label}`}
          </Text>
          {big ? (
            <Box paddingLeft={2} marginY={1}>
              <BigDigits text={tile.value.replace(/ s$/, "")} bold={tile.live} />
            </Box>
          ) : (
            <Text bold={tile.live}>{`  ${tile.value}`}</Text>
          )}
          <Text {...(tile.late ? { color: "yellow" } : {})} bold={tile.late} dimColor={!tile.late}>
            {`  ${cutTo(tile.detail, (widths[place] ?? 0) - 3)}`}
          </Text>
        </Box>
      ))}
    </Box>
  );
}

const timeOf = ({ total }: Timer) => (total === null ? UNKNOWN : stopwatch(total));

function bypassTile({ timers: { bypass } }: Run): Tile {
  return {
    label: "BYPASS",
    value: timeOf(bypass),
    detail: runsText(bypass, "run"),
    live: bypass.current !== null,
    late: false,
  };
}

function clampTile({ timers: { arrest, reperfusion, circulatoryArrest } }: Run): Tile {
  const detail =
    circulatoryArrest.current !== null
      ? `circ arrest ${stopwatch(circulatoryArrest.current)}`
      : reperfusion.total !== null
        ? `reperfused ${stopwatch(reperfusion.total)}`
        : runsText(arrest, "clamp");
  return { label: "CLAMP", value: timeOf(arrest), detail, live: arrest.current !== null, late: false };
}

/** With one interval nothing; with more, which it is and how long it has lasted. */
function runsText({ intervals, current, total }: Timer, what: string): string {
  if (total === null) return "not yet";
  if (intervals.length < 2) return current === null ? "ended" : "on";
  return current === null
    ? `${intervals.length} ${what}s`
    : `${what} ${intervals.length}: ${stopwatch(current)}`;
}

function doseTile({ running, nextDose, now }: Run): Tile {
  if (running) {
    const soFar = running.ml === null ? "running" : `${plain(running.ml)} mL so far`;
    return {
      label: "DOSE RUNNING",
      value: stopwatch(now - running.start),
      detail: soFar,
      live: true,
      late: false,
    };
  }
  const { since, due, because } = nextDose;
  const late = due !== null && due - now < 1000;
  return {
    label: "SINCE DOSE",
    value: since === null ? UNKNOWN : stopwatch(since),
    detail: due === null ? because : dueText(due - now),
    live: due !== null,
    late,
  };
}

/** Against the target only until bypass has ended: heparin is reversed then. */
function actTile({ act, course }: Run): Tile {
  if (!act) return { label: "ACT", value: UNKNOWN, detail: "none yet", live: false, late: false };
  const age = minutesText(act.age);
  const value = `${plain(act.seconds)} s`;
  if (course.phase === "after")
    return { label: "ACT", value, detail: `${age} ago`, live: false, late: false };
  const detail = act.met ? `ok · ${age} ago` : `under ${plain(act.target)} · ${age}`;
  return { label: "ACT", value, detail, live: true, late: !act.met };
}
