/** A case without what says who: the patient's number, name and birth date, the people, and what was written freely. */
import { lookUp } from "../format/look-up.ts";
import type { CaseFile } from "../record/case.ts";
import { type Entry, entrySchema, type Kind } from "../record/entry.ts";

type Fields = { readonly [field: string]: unknown };
/** What may be told in the place of a value; `undefined` for nothing at all. */
type Mend = (value: unknown) => unknown;

/** What stands where something was left out. */
export const LEFT_OUT = "(left out)";

/**
 * The same case, as valid as before, with codes (`P1`, `P2`, in the order of appearance) for the people who signed.
 * Times, sizes, lot numbers and what was measured stay. `keepNotes` leaves notes, incidents and reasons as they were
 * written, though they may name somebody. What this version does not know is left out, and
 * the seal, which would not hold.
 */
export function withoutNames(file: CaseFile, keepNotes = false): CaseFile {
  const mends = mendsFor(codesFor(file.entries), keepNotes);
  const kinds = new Map(file.entries.map(({ id, kind }) => [id, kind]));
  const { seal: _, ...unsealed } = file;
  return {
    ...unsealed,
    label: file.id,
    protocol: { ...file.protocol, operators: [] },
    entries: file.entries.map((entry) => mended(entry, mends, kinds)),
  };
}

/** Codes for initials, whatever field they stand in. */
function codesFor(entries: readonly Entry[]): Mend {
  const codes = new Map<string, string>();
  const code: Mend = (initials) => {
    if (typeof initials !== "string" || initials === "") return initials;
    if (!codes.has(initials)) codes.set(initials, `P${codes.size + 1}`);
    return codes.get(initials);
  };
  for (const { by } of entries) code(by);
  return code;
}

function mendsFor(code: Mend, keepNotes: boolean): Record<string, Mend> {
  const gone: Mend = () => undefined;
  const kept: Mend = (value) => value;
  const covered = keepNotes ? kept : () => LEFT_OUT;
  const dropped = keepNotes ? kept : gone;
  return {
    ...{ number: gone, name: gone, born: gone, history: dropped },
    ...{ place: gone, summary: gone, unitNumber: gone },
    ...{ by: code, operator: code, checkedBy: code, people: unnamed },
    ...{ typed: () => "", note: dropped, text: covered, reason: covered },
  };
}

const unnamed: Mend = (people) =>
  Array.isArray(people) ? people.map(({ role }: Fields) => ({ role, who: LEFT_OUT })) : undefined;

function mended(entry: Entry, mends: Record<string, Mend>, kinds: ReadonlyMap<string, Kind>): Entry {
  const fields = told(entry, entry.kind, mends);
  if (entry.kind !== "amend") return fields as Entry;
  return { ...fields, changes: told(entry.changes, kinds.get(entry.target), mends) } as Entry;
}

function told(fields: Fields, kind: Kind | undefined, mends: Record<string, Mend>): Fields {
  return Object.fromEntries(
    Object.entries(fields).flatMap(([field, value]) => {
      if (!isKnown(kind, field)) return [];
      // A drug's name is nobody's.
      const mend = kind === "drug" && field === "name" ? undefined : lookUp(mends, field);
      const may = mend && value !== null ? mend(value) : value;
      return may === undefined ? [] : [[field, may]];
    }),
  );
}

const FIELDS = new Map(
  entrySchema.options.map(({ shape }) => [shape.kind.value as Kind, new Set(Object.keys(shape))]),
);

const isKnown = (kind: Kind | undefined, field: string): boolean =>
  kind !== undefined && FIELDS.get(kind)?.has(field) === true;
