/** The running balances and what is in force: three rows that are always there. */
import { Box, Text } from "ink";
import { fractionText, spanName } from "../figures/entry-words.ts";
import type { Figure } from "../figures/figure.ts";
import { isOn, type Run } from "../figures/run.ts";
import { dueText, minutesText } from "../format/duration.ts";
import { clockTimeOf } from "../format/instant.ts";
import { fixed, grouped, plain, signed } from "../format/number.ts";
import { harmless, listed } from "../format/text.ts";
import { cutTo } from "./fit.ts";

type Pair = readonly [label: string, value: string];

export function Balances({ run, columns }: { run: Run; columns: number }) {
  return (
    <Box flexDirection="column">
      <Pairs pairs={volumePairs(run)} columns={columns} />
      <Pairs pairs={orderPairs(run)} columns={columns} />
      <Text wrap="truncate">{` ${cutTo(stateText(run), columns - 2)}`}</Text>
    </Box>
  );
}

/** Labels dim, values bold; a pair that does not fit whole is left out, never cut. */
function Pairs({ pairs, columns }: { pairs: readonly Pair[]; columns: number }) {
  let room = columns;
  const shown = pairs.filter(([label, value]) => {
    room -= label.length + value.length + 3;
    return room >= 0;
  });
  return (
    <Text wrap="truncate">
      {shown.map(([label, value]) => (
        <Text key={label}>
          <Text dimColor>{` ${label} `}</Text>
          <Text bold>{`${value} `}</Text>
        </Text>
      ))}
    </Text>
  );
}

const mL = ({ value }: Figure) => fixed(value);

function volumePairs({ course: { balances, doses, phase }, pump, netToPatient }: Run): Pair[] {
  const given = balances.arrestGiven.value;
  const afterwards: Pair[] = [
    ["returned", mL(balances.returned)],
    ["left", mL(pump.left)],
    ["to patient", signed(netToPatient.value)],
  ];
  const level: Pair[] = [
    ["level", pump.age === null ? mL(pump.left) : `${mL(pump.left)} (${minutesText(pump.age)})`],
  ];
  return [
    [
      "arrest mL",
      given === null
        ? mL(balances.arrestGiven)
        : `${plain(given)} in ${doses.length}, cryst ${mL(balances.arrestCrystalloid)}`,
    ],
    ["in", mL(balances.fluidIn)],
    ["urine", mL(balances.urine)],
    ["out", mL(balances.out)],
    ["net", signed(balances.net.value)],
    ...(phase === "after" ? afterwards : level),
  ];
}

function orderPairs({ course, coagulation, flowOrder, targetOrder }: Run): Pair[] {
  const { heparinTotal, heparinAge, protamineGiven, protamineSuggested } = coagulation;
  const heparin =
    heparinAge === null
      ? grouped(heparinTotal.value)
      : `${grouped(heparinTotal.value)} IU ${minutesText(heparinAge)}`;
  const protamine = protamineGiven.value === null ? fixed(null) : `${plain(protamineGiven.value)} mg`;
  const advised = protamineSuggested.value === null ? "" : ` (${fixed(protamineSuggested.value)} by ratio)`;
  const given = course.phase === "after" || protamineGiven.value !== null;
  return [
    ["heparin", heparin],
    ...(given ? ([["protamine", `${protamine}${advised}`]] as const) : []),
    ["flow", flowText(flowOrder?.entry, course.fullFlow.value)],
    ["target", targetOrder ? `${plain(targetOrder.entry.celsius)} °C` : fixed(null)],
  ];
}

type FlowOrder = { fraction?: number | undefined; litresPerMinute?: number | undefined };

function flowText(order: FlowOrder | undefined, full: number | null): string {
  if (!order) return full === null ? fixed(null) : `full is ${fixed(full, 2)}`;
  if (order.fraction === undefined) return `${plain(order.litresPerMinute ?? 0)} L/min`;
  const words = fractionText(order.fraction);
  return full === null ? words : `${words} = ${fixed(order.fraction * full, 2)} L/min`;
}

/** Spans that are on besides bypass and clamp, and the reminder that is due first. */
function stateText({ course, now }: Run): string {
  const on = [...course.spans.keys()].filter(
    (what) => what !== "bypass" && what !== "clamp" && isOn(course, what),
  );
  const spans = on.length === 0 ? "" : `on: ${listed(on.map((what) => spanName(what, course.protocol)))}`;
  const [first] = course.reminders;
  const reminder = first
    ? `${clockTimeOf(first.entry.dueAt).slice(0, 5)} ${harmless(first.entry.text)} ${dueText(first.due - now)}`
    : "";
  return [reminder, spans].filter((text) => text !== "").join("   ");
}
