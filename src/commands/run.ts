/** `pumpside run`: the console, on a case or on the list of cases. */
import { runApp } from "../console/app.ts";
import { taken } from "../format/outcome.ts";
import { openFolder } from "../store/folder.ts";
import { copyFolder } from "../store/second-copy.ts";
import { hangBell } from "./bell.ts";
import { openDesk } from "./case-desk.ts";
import { protocolIn } from "./new.ts";
import { folderOf, type Place, whereIs } from "./place.ts";
import { openSession } from "./session.ts";
import { hasTerminal, show } from "./show.tsx";
import { agreed, CASE_FAULT, complain, WRONG_CALL } from "./speak.ts";
import { safeAt } from "./unlock.ts";

type RunOptions = Place & { readonly protocol?: string; readonly bell?: boolean };

const NO_TERMINAL =
  "the console needs a terminal: run it in one, or use new, log, figures, report, list, check, review, keys or demo, which work without.";

export async function runVerb(name: string | undefined, options: RunOptions): Promise<number> {
  if (!hasTerminal()) return complain(NO_TERMINAL, WRONG_CALL);
  return name === undefined ? await cases(options) : await oneCase(name, options);
}

/** The terminal's own bell, for those who asked for it. */
const bellFor = ({ bell }: RunOptions) => (bell ? hangBell(() => process.stdout.write("\x07")) : undefined);

/** The start screen, and from there wherever the person goes; a demo leads back to it. */
async function cases(options: RunOptions): Promise<number> {
  const own = options.protocol === undefined ? taken(null) : await protocolIn(options.protocol);
  if (!own.ok) return complain(own.fault, WRONG_CALL);
  const folder = await openFolder(folderOf(options));
  if (!folder.ok) return complain(folder.fault, CASE_FAULT);
  const safe = await safeAt(folder.value, options);
  if (!safe.ok) return safe.code;
  for (;;) {
    const session = openSession(
      openDesk(folder.value, { own: own.value, copyTo: copyFolder(options.copyTo), safe: safe.value }),
      undefined,
      bellFor(options),
    );
    const code = await show(session);
    if ((await session.ended) === "left") return code;
    const { demoInConsole } = await import("./demo.ts");
    await demoInConsole();
  }
}

async function oneCase(name: string, options: RunOptions): Promise<number> {
  const where = await whereIs(name, options);
  if (!where.ok) return where.code;
  const { path, safe } = where.value;
  const desk = openDesk(folderOf(options), { copyTo: copyFolder(options.copyTo), safe });
  let held = await desk.hold(path);
  if (held.name === "locked") {
    if (!(await agreed(`"${name}": ${held.fault} Take it over? [y/N] `))) return CASE_FAULT;
    held = await desk.hold(path, held.takeOver);
  }
  if (held.name === "could-not") return complain(`"${name}": ${held.fault}`, CASE_FAULT);
  if (held.name !== "opened") return CASE_FAULT;
  return await show(openSession(desk, { app: runApp(held, null), effects: [] }, bellFor(options)));
}
