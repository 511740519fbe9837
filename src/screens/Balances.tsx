/** The running balances and what is in force: three rows that are always there. */
import { Box, Text } from "ink";
import { fractionText } from "../figures/entry-words.ts";
import type { Figure } from "../figures/figure.ts";
import { isOn, type Run } from "../figures/run.ts";
import { minutesText } from "../format/duration.ts";
import { fixed, grouped, plain, signed } from "../format/number.ts";
import { listed } from "../format/text.ts";
import { spanName } from "../protocol/names.ts";
import { cutTo, fitting } from "./fit.ts";

type Pair = readonly [label: string, value: string];

export function Balances({ run, columns }: { run: Run; columns: number }) {
  const arrest = arrestPair(run);
  const room = columns - widthOf(arrest) - 2;
  return (
    <Box flexDirection="column">
      <Pairs pairs={volumePairs(run)} columns={columns} />
      <Pairs pairs={orderPairs(run)} columns={columns} />
      <Text wrap="truncate">
        <Pairs pairs={[arrest]} columns={columns} />
        {`   ${cutTo(stateText(run), room)}`}
      </Text>
    </Box>
  );
}

/** With the gap before it. */
const widthOf = ([label, value]: Pair): number => label.length + value.length + 3;

/** Labels dim, values bold; a pair that does not fit whole is left out, never cut. */
function Pairs({ pairs, columns }: { pairs: readonly Pair[]; columns: number }) {
  return (
    <Text wrap="truncate">
      {fitting(pairs, columns + 1, widthOf).map(([label, value], place) => (
        <Text key={label}>
          <Text dimColor>{`${place === 0 ? " " : "  "}${label} `}</Text>
          <Text bold>{value}</Text>
        </Text>
      ))}
    </Text>
  );
}

const mL = ({ value }: Figure) => fixed(value);

/** What is asked first stands first; after bypass urine, which is part of out, is the first to make way. */
function volumePairs({ course: { balances, phase }, pump, netToPatient }: Run): Pair[] {
  const fluidIn: Pair = ["in", mL(balances.fluidIn)];
  const urine: Pair = ["urine", mL(balances.urine)];
  const rest: Pair[] = [
    ["out", mL(balances.out)],
    ["net", signed(balances.net.value)],
  ];
  if (phase !== "after") {
    const age = pump.age === null ? "" : ` (${minutesText(pump.age)})`;
    return [fluidIn, urine, ...rest, ["level", `${mL(pump.left)}${age}`]];
  }
  const afterwards: Pair[] = [
    ["returned", mL(balances.returned)],
    ["left", mL(pump.left)],
    ["to patient", signed(netToPatient.value)],
  ];
  return [fluidIn, ...rest, ...afterwards, urine];
}

function arrestPair({ course: { balances, doses } }: Run): Pair {
  const given = balances.arrestGiven.value;
  const told = given === null ? "" : ` mL in ${doses.length}, cryst ${mL(balances.arrestCrystalloid)}`;
  return ["arrest", `${given === null ? fixed(null) : plain(given)}${told}`];
}

/** On bypass the orders in force, after it what reverses the heparin. */
function orderPairs({ course, coagulation, flowOrder, targetOrder }: Run): Pair[] {
  const { heparinTotal, heparinAge, protamineGiven, protamineSuggested } = coagulation;
  const heparin =
    heparinAge === null
      ? grouped(heparinTotal.value)
      : `${grouped(heparinTotal.value)} IU ${minutesText(heparinAge)} ago`;
  const given = protamineGiven.value === null ? fixed(null) : `${plain(protamineGiven.value)} mg`;
  const advised = protamineSuggested.value === null ? "" : ` (${fixed(protamineSuggested.value)} by ratio)`;
  const protamine: Pair = ["protamine", given];
  const orders: Pair[] = [
    ["flow", flowText(flowOrder?.entry, course.fullFlow.value)],
    ["target", targetOrder ? `${plain(targetOrder.entry.celsius)} °C` : fixed(null)],
  ];
  return course.phase === "after"
    ? [["heparin", heparin], ["protamine", `${given}${advised}`], ...orders]
    : [["heparin", heparin], ...orders, protamine];
}

type FlowOrder = { fraction?: number | undefined; litresPerMinute?: number | undefined };

function flowText(order: FlowOrder | undefined, full: number | null): string {
  if (!order) return full === null ? fixed(null) : `full is ${fixed(full, 2)}`;
  if (order.fraction === undefined) return `${plain(order.litresPerMinute ?? 0)} L/min`;
  const words = fractionText(order.fraction);
  return full === null
    ? words
    : `${words.replace(" of full", "")} = ${fixed(order.fraction * full, 2)} L/min`;
}

/** Spans that are on besides bypass and clamp. */
function stateText({ course }: Run): string {
  const on = [...course.spans.keys()].filter(
    (what) => what !== "bypass" && what !== "clamp" && isOn(course, what),
  );
  return on.length === 0 ? "" : `on: ${listed(on.map((what) => spanName(what, course.protocol)))}`;
}
