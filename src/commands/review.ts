/** `pumpside review`: a case read back, on the screen or, without a terminal, as text. */
import { reviewApp } from "../console/app.ts";
import { entryWords } from "../figures/entry-words.ts";
import { clockTimeOf } from "../format/instant.ts";
import { figuresText } from "../reports/figures.ts";
import { openDesk } from "./case-desk.ts";
import { caseNamed, complain, DONE, folderOf, type Place, say, timeOf, WRONG_CALL } from "./place.ts";
import { openSession } from "./session.ts";
import { hasTerminal, show } from "./show.tsx";

export async function reviewVerb(name: string, options: Place): Promise<number> {
  const found = await caseNamed(name, options);
  if (!found.ok) return found.code;
  const { file } = found.value;
  if (hasTerminal()) {
    await show(openSession(openDesk(folderOf(options)), { app: reviewApp([file], null), effects: [] }));
    return DONE;
  }
  for (const entry of file.entries) {
    const { subject, says } = entryWords(entry, file.protocol);
    say(`${clockTimeOf(entry.at)} ${`#${entry.seq}`.padStart(5)} ${subject.padEnd(11)} ${says}`);
  }
  const at = timeOf(file.entries.at(-1)?.loggedAt, file);
  if (!at.ok) return complain(at.fault, WRONG_CALL);
  say(`\n${figuresText(file, at.value)}`);
  return DONE;
}
