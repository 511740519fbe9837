/** ! : an advisory answered with a reason. The advice steps back; the reason is in the record. */
import { advisoriesOf, type Shown } from "../../figures/advisories/advisories.ts";
import { type Outcome, refused, taken } from "../../format/outcome.ts";
import type { Draft } from "../../record/entry.ts";
import type { EntryStroke } from "../stroke.ts";

const shownText = ({ text, source, acknowledged }: Shown, place: number): string =>
  [`${place + 1} ${text}`, source && `(${source})`, acknowledged && `answered: ${acknowledged.entry.reason}`]
    .filter(Boolean)
    .join(" ");

export const acknowledge: EntryStroke = {
  key: "!",
  id: "acknowledge",
  short: "answer",
  name: "answer an advisory",
  opens: "line",
  takes: "its number on the screen, then the reason",
  likely: [],
  example: "! 1 surgeon knows",
  asks: () => "number of the advisory, then the reason",
  shows: ({ run }) => advisoriesOf(run).map(shownText),
  read: ({ words: [first, ...reason] }, { run }): Outcome<Draft> => {
    const shown = advisoriesOf(run);
    if (shown.length === 0) return refused("There is no advisory to answer: Esc goes back.");
    const advisory = /^\d+$/.test(first ?? "") ? shown[Number(first) - 1] : undefined;
    if (!advisory) return refused(`Which one: type a number from 1 to ${shown.length}, then the reason.`);
    if (reason.length === 0) return refused("Why is it as it should be? Type a few words behind the number.");
    return taken({ kind: "acknowledged", advisory: advisory.id, reason: reason.join(" ") });
  },
};
