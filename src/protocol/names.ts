/** What a unit calls its things: the name for an id. An id that the protocol does not know is told as it is. */
import type { Protocol } from "./protocol.ts";

type Called = { readonly id: string; readonly name: string };

const nameIn = (list: readonly Called[], id: string): string => list.find((one) => one.id === id)?.name ?? id;

/** Of a span or a moment. */
export const spanName = (what: string, { marks }: Protocol): string => nameIn(marks, what);

/** Of the way in which a span is done. */
export const wayName = (what: string, way: string, { marks }: Protocol): string =>
  nameIn(marks.find(({ id }) => id === what)?.ways ?? [], way);

/** Of a fluid that goes in or comes out; what is returned has none. */
export const fluidName = (
  direction: "in" | "out" | "returned",
  id: string,
  { fluidsIn, fluidsOut }: Protocol,
): string | undefined =>
  direction === "returned" ? undefined : nameIn(direction === "in" ? fluidsIn : fluidsOut, id);

export const drugName = (id: string, { drugs }: Protocol): string => nameIn(drugs, id);
export const componentName = (id: string, { circuit }: Protocol): string => nameIn(circuit.components, id);
export const solutionName = (id: string, { solutions }: Protocol): string => nameIn(solutions, id);

/** Of a checklist's item: the list's name and the item's own words. */
export function checkItem(
  checklist: string,
  item: string,
  { checklists }: Protocol,
): [list: string, text: string] {
  const list = checklists.find(({ id }) => id === checklist);
  return [list?.name ?? checklist, list?.items.find(({ id }) => id === item)?.text ?? item];
}
