/** `pumpside keys`: the stroke table, as text, as JSON, or as the table of the README. */
import { STROKES } from "../console/strokes/table.ts";
import { DONE, say } from "./speak.ts";

type KeysOptions = { readonly json?: boolean; readonly markdown?: boolean };

export async function keysVerb({ json, markdown }: KeysOptions): Promise<number> {
  if (json)
    say(
      JSON.stringify(
        STROKES.map(({ key, id, name, takes }) => ({ key, id, name, takes })),
        null,
        2,
      ),
    );
  else if (markdown) say(keysMarkdown());
  else say(keysText());
  return DONE;
}

/** A row a stroke. */
export const keysText = (): string =>
  STROKES.map(({ key, name, takes }) => `${key.padEnd(4)} ${name.padEnd(24)} ${takes}`).join("\n");

/** The key table of the README. */
function keysMarkdown(): string {
  const rows = STROKES.map(({ key, name, takes }) => `| \`${key}\` | ${name} | ${takes} |`);
  return ["| key | entry | the line takes |", "| --- | --- | --- |", ...rows].join("\n");
}
