/** A checklist's item ticked by one line, for scripts: `c b identity`, `c b identity n`, `c b identity u`. */
import { checkStates, stateOf } from "../figures/checks.ts";
import { lookUp } from "../format/look-up.ts";
import { type Outcome, refused, taken } from "../format/outcome.ts";
import { listed } from "../format/text.ts";
import type { Checklist } from "../protocol/checklists.ts";
import type { CaseFile } from "../record/case.ts";
import { standing } from "../record/standing.ts";
import { closedFault } from "./closed.ts";
import { TICKS } from "./update-checklist.ts";

type Ticked = {
  readonly list: Checklist;
  readonly item: Checklist["items"][number];
  /** The key that ticks it so. */
  readonly tick: string;
};

/** The list by its letter, the item by its name or the beginning of it, and how it is ticked; nothing is done. */
export function tickedBy(text: string, lists: readonly Checklist[]): Outcome<Ticked> {
  const [letter = "", name, tick = " ", ...rest] = text.trim().split(/\s+/);
  const list = lists.find((one) => one.letter === letter);
  if (!list)
    return refused(
      `Which checklist: type its letter, ${listed(
        lists.map((one) => `${one.letter} ${one.name}`),
        "or",
      )}, and an item.`,
    );
  const item =
    list.items.find(({ id }) => id === name) ??
    list.items.find(({ id }) => name !== undefined && id.startsWith(name));
  if (!item)
    return refused(
      `Which item of ${list.name}: type one of ${listed(
        list.items.map(({ id }) => id),
        "or",
      )}.`,
    );
  return lookUp(TICKS, tick) === undefined || rest.length > 0
    ? refused("Behind the item type nothing for done, n for not applicable, or u to open it again.")
    : taken({ list, item, tick });
}

/** The entry that a line means, or why it means none. */
export function checkMeant(text: string, file: CaseFile) {
  const closed = closedFault(file);
  if (closed) return refused(closed);
  const ticked = tickedBy(text, file.protocol.checklists);
  if (!ticked.ok) return ticked;
  const { list, item, tick } = ticked.value;
  const state = TICKS[tick] ?? "done";
  return stateOf(checkStates(standing(file.entries).facts), list.id, item.id) === state
    ? refused(`${list.name}, ${item.id} is ${state} already.`)
    : taken({ kind: "check" as const, checklist: list.id, item: item.id, state });
}
