/** `pumpside new`: makes a case and prints its path. */
import { readFile } from "node:fs/promises";
import { ownKeyFaults } from "../console/strokes/own-keys.ts";
import { type Outcome, refused, taken } from "../format/outcome.ts";
import { adultProtocol } from "../protocol/adult.ts";
import { checkProtocolText } from "../protocol/check.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { openClock } from "../store/clock.ts";
import { createCase } from "../store/open-case.ts";
import { folderOf, type Place } from "./place.ts";
import { CASE_FAULT, complain, DONE, say, WRONG_CALL } from "./speak.ts";
import { safeAt } from "./unlock.ts";

type NewOptions = Place & {
  readonly label?: string;
  readonly protocol?: string;
  readonly by?: string;
};

export async function newVerb(options: NewOptions): Promise<number> {
  const protocol = await protocolIn(options.protocol);
  if (!protocol.ok) return complain(protocol.fault, WRONG_CALL);
  const folder = folderOf(options);
  const safe = await safeAt(folder, options);
  if (!safe.ok) return safe.code;
  const made = await createCase({
    folder,
    safe: safe.value,
    label: options.label,
    protocol: protocol.value,
    operator: options.by ?? "",
    now: openClock().now(),
  });
  if (!made.ok) return complain(made.fault, CASE_FAULT);
  say(made.value.path);
  return DONE;
}

/** The protocol in a file, else the one that adults are run by. */
export async function protocolIn(path: string | undefined): Promise<Outcome<Protocol>> {
  if (path === undefined) return taken(adultProtocol);
  const text = await readFile(path, "utf8").catch(() => null);
  if (text === null)
    return refused(`the protocol file "${path}" cannot be read: check its name and that you may read it.`);
  const checked = checkProtocolText(text);
  const faults = checked.ok ? ownKeyFaults(checked.value) : checked.faults;
  const [first] = faults;
  if (checked.ok && first === undefined) return taken(checked.value);
  const where = first?.place ? ` at ${first.place}` : "";
  return refused(
    `the protocol file has ${faults.length === 1 ? "a fault" : `${faults.length} faults, the first`}${where}: ${first?.says}; pumpside protocol check says what to do.`,
  );
}
