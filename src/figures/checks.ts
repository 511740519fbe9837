/** How far the checklists have been ticked. */
import type { Checklist } from "../protocol/checklists.ts";
import type { Protocol } from "../protocol/protocol.ts";
import type { EntryOf } from "../record/entry.ts";
import { type Fact, ofKind } from "../record/standing.ts";

export type ItemState = EntryOf<"check">["state"];

/** The state of every item that was ever ticked, by checklist and item. */
export function checkStates(facts: readonly Fact[]): ReadonlyMap<string, ItemState> {
  return new Map(
    ofKind(facts, "check").map(({ entry }) => [checkKey(entry.checklist, entry.item), entry.state]),
  );
}

const checkKey = (checklist: string, item: string): string => `${checklist}/${item}`;

/** The state of an item; open while nobody has ticked it. */
export const stateOf = (states: ReadonlyMap<string, ItemState>, checklist: string, item: string): ItemState =>
  states.get(checkKey(checklist, item)) ?? "open";

/** The items of a checklist that are still open. */
export const openItems = (list: Checklist, states: ReadonlyMap<string, ItemState>): Checklist["items"] =>
  list.items.filter(({ id }) => stateOf(states, list.id, id) === "open");

/** Checklists that are to be pointed out at a moment and have open items. */
export const openAt = (
  protocol: Protocol,
  facts: readonly Fact[],
  moment: NonNullable<Checklist["remindAt"]>,
) => {
  const states = checkStates(facts);
  return protocol.checklists
    .filter(({ remindAt }) => remindAt === moment)
    .map((list) => ({ list, open: openItems(list, states).length }))
    .filter(({ open }) => open > 0);
};
