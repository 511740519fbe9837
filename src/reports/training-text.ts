/** The result of a training run as text: every order with its answer, and what there is to work on. */
import { entryWords } from "../figures/entry-words.ts";
import { fixed } from "../format/number.ts";
import type { Protocol } from "../protocol/protocol.ts";
import type { Entry } from "../record/entry.ts";
import { table } from "./blocks.ts";
import { quantile } from "./quartiles.ts";
import { TEXT_WIDTH } from "./text.ts";
import { tableChunks } from "./text-table.ts";
import type { Answer, AnswerVerdict, Score } from "./training.ts";

/** `all` is how many orders the whole run has. */
export function trainingText(
  { answers, extra, corrections }: Score,
  all: number,
  protocol: Protocol,
): string {
  const count = (verdict: AnswerVerdict) => answers.filter((answer) => answer.verdict === verdict).length;
  const delays = answers.flatMap(({ delay }) => delay ?? []).toSorted((a, b) => a - b);
  const orders = table(
    "Orders and answers",
    ["order", ">after", "answer"],
    answers.map((answer) => [answer.order.says, secondsText(answer.delay), answerText(answer, protocol)]),
    "No order was said.",
  );
  const others = extra.map(({ entry }) => `  ${saysOf(entry, protocol)}`);
  return [
    "TRAINING RUN (an invented case)",
    "=".repeat(TEXT_WIDTH),
    `${answers.length} of ${all} orders were said: ${count("right")} right, ${count("put right")} put right, ${count("wrong")} wrong, ${count("missed")} missed.`,
    `From the order to the first key: median ${secondsText(quantile(delays, 0.5))}, longest ${secondsText(delays.at(-1) ?? null)}.`,
    `Corrections: ${corrections}. Entries nobody asked for: ${extra.length}.`,
    ...others,
    "",
    ...tableChunks(orders, TEXT_WIDTH).flatMap(({ lines }) => lines),
  ]
    .join("\n")
    .trimEnd();
}

const secondsText = (ms: number | null): string => `${fixed(ms === null ? null : ms / 1000, 1)} s`;

function answerText({ verdict, fact, order }: Answer, protocol: Protocol): string {
  if (verdict !== "wrong" || fact === null) return verdict;
  return `wrong: ${saysOf(fact.entry, protocol)}, asked was ${saysOf(order.expected, protocol)}`;
}

function saysOf(entry: Entry, protocol: Protocol): string {
  const { subject, says } = entryWords(entry, protocol);
  return `${subject} ${says}`.trim();
}
