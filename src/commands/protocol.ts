/** `pumpside protocol check`: every fault of a protocol file, with its place and what to do. */
import { readFile } from "node:fs/promises";
import { ownKeyFaults } from "../console/strokes/own-keys.ts";
import { checkProtocolText } from "../protocol/check.ts";
import { faultText } from "../protocol/fault.ts";
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
