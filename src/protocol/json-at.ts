/** Looking into JSON whose shape is not known yet. */
import type { Path } from "./fault.ts";
import { LONGEST_LIST } from "./lists.ts";

/** What stands at a path; undefined where the path leads nowhere. Own names only. */
export function at(json: unknown, path: Path): unknown {
  let here = json;
  for (const step of path) {
    if (typeof here !== "object" || here === null || !Object.hasOwn(here, step)) return undefined;
    here = (here as Record<PropertyKey, unknown>)[step];
  }
  return here;
}

/** The number at a path. */
export function numberAt(json: unknown, path: Path): number | undefined {
  const value = at(json, path);
  return typeof value === "number" ? value : undefined;
}

/** The text at a path. */
export function textAt(json: unknown, path: Path): string | undefined {
  const value = at(json, path);
  return typeof value === "string" ? value : undefined;
}

/** The list at a path, as far as a list may go; empty where there is none. */
export function listAt(json: unknown, path: Path): readonly unknown[] {
  const value = at(json, path);
  return Array.isArray(value) ? value.slice(0, LONGEST_LIST) : [];
}

/** The texts under one name of a list's members: the ids of the fluids. */
export const eachTextAt = (json: unknown, path: Path, key: string): string[] =>
  listAt(json, path).flatMap((member) => textAt(member, [key]) ?? []);
