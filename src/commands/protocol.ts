/** `pumpside protocol`: the shipped files to begin from, what every setting means, and the faults of a unit's own file. */
import { readFile } from "node:fs/promises";
import { ownKeyFaults } from "../console/strokes/own-keys.ts";
import { listed } from "../format/text.ts";
import { checkProtocolText } from "../protocol/check.ts";
import { faultText } from "../protocol/fault.ts";
import { settings } from "../protocol/settings.ts";
import { SHIPPED } from "../protocol/shipped.ts";
import { CASE_FAULT, complain, DONE, say, WRONG_CALL } from "./speak.ts";

export async function protocolCheckVerb(path: string): Promise<number> {
  const text = await readFile(path, "utf8").catch(() => null);
  if (text === null)
    return complain(
      `the file "${path}" cannot be read: check its name and that you may read it.`,
      WRONG_CALL,
    );
  const checked = checkProtocolText(text);
  const faults = checked.ok ? ownKeyFaults(checked.value) : checked.faults;
  const found = checked.ok ? [...faults, ...checked.warnings] : faults;
  for (const fault of found) say(faultText(fault));
  if (!checked.ok || faults.length > 0)
    return complain(
      `${faults.length} ${faults.length === 1 ? "fault" : "faults"}: the protocol cannot be used yet.`,
      CASE_FAULT,
    );
  say(
    `The protocol "${checked.value.name}" can be used${found.length > 0 ? `, with ${found.length} remarks` : ""}.`,
  );
  return DONE;
}

/** A shipped protocol as a file to begin from. */
export async function protocolShowVerb(name: string): Promise<number> {
  const found = SHIPPED.find((one) => one.name === name);
  if (!found)
    return complain(
      `there is no shipped protocol "${name}": take ${listed(
        SHIPPED.map((one) => one.name),
        "or",
      )}.`,
      WRONG_CALL,
    );
  say(JSON.stringify(found, null, 2));
  return DONE;
}

/** What every setting of the file is, and what is expected there. */
export async function protocolSettingsVerb(): Promise<number> {
  for (const { place, says, expects, needed } of settings()) {
    say(`${place}${needed ? "" : " (may be left out)"}\n    ${[says, expects].filter(Boolean).join(": ")}`);
  }
  return DONE;
}
