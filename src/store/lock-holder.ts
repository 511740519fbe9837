/** Who holds a lock: a process of a computer, told apart from another that came by the same number later. */
import { randomBytes } from "node:crypto";
import { readFileSync, readlinkSync } from "node:fs";
import { hostname } from "node:os";
import * as z from "zod";
import { toIso } from "../format/instant.ts";
import { openClock } from "./clock.ts";

const holderSchema = z.object({
  pid: z.int().positive(),
  host: z.string(),
  /** When the process was started: comparable with another reading on the same computer only. */
  started: z.string(),
  /** The space in which the number of the process means something: containers of one computer differ in it. */
  space: z.string().optional(),
  /** When the lock was taken, in ISO 8601 with the offset of the wall clock there. */
  since: z.string(),
  /** A word of its own for each lock taken. */
  token: z.string().regex(/^[0-9a-f]{16}$/),
});

export type Holder = z.infer<typeof holderSchema>;

/** This process, taking a lock now. */
export const thisHolder = (): Holder => ({
  pid: process.pid,
  host: hostname(),
  started: startOf(process.pid)?.started ?? new Date(performance.timeOrigin).toISOString(),
  space: spaceOfNumbers(),
  since: toIso(openClock().now()),
  token: randomBytes(8).toString("hex"),
});

/** Reads the text of a lock; `null` when it is none. */
export function holderIn(text: string): Holder | null {
  try {
    return holderSchema.parse(JSON.parse(text));
  } catch {
    return null;
  }
}

/** Whether the holder runs where its process can be asked about. */
export const isHere = ({ host, space }: Holder): boolean =>
  host === hostname() && (space === undefined || space === spaceOfNumbers());

/** Whether the process is known to be gone. Of another computer nothing is known. */
export function isGone(holder: Holder): boolean {
  if (!isHere(holder)) return false;
  if (!isRunning(holder.pid)) return true;
  const found = startOf(holder.pid);
  return found !== null && (found.ended || found.started !== holder.started);
}

function spaceOfNumbers(): string | undefined {
  try {
    return readlinkSync("/proc/self/ns/pid");
  } catch {
    return undefined;
  }
}

function isRunning(pid: number): boolean {
  try {
    return process.kill(pid, 0);
  } catch (error) {
    return (error as NodeJS.ErrnoException).code !== "ESRCH";
  }
}

/** From Linux's own list of processes; `null` where there is none or the process is not shown. */
function startOf(pid: number): { started: string; ended: boolean } | null {
  try {
    const boot = readFileSync("/proc/sys/kernel/random/boot_id", "utf8").trim();
    const stat = readFileSync(`/proc/${pid}/stat`, "utf8");
    // The name of the process, in brackets, may hold spaces; state is the third field, the start the twenty-second.
    const fields = stat.slice(stat.lastIndexOf(")") + 2).split(" ");
    return { started: `${boot} ${fields[19]}`, ended: fields[0] === "Z" || fields[0] === "X" };
  } catch {
    return null;
  }
}
