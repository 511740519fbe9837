/** The desk: the one case that is being written, with its lock, its keeper and its clock, and the ways to others. */
import type { AppMessage } from "../console/app.ts";
import { halfTypedOf, readHalfTyped } from "../console/half-typed.ts";
import type { Model } from "../console/model.ts";
import type { CaseLine } from "../console/start.ts";
import type { Outcome } from "../format/outcome.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { SHIPPED } from "../protocol/shipped.ts";
import type { CaseFile } from "../record/case.ts";
import { listCases } from "../store/case-list.ts";
import { type Clock, openClock, realSources, recordedSteps, startsBefore } from "../store/clock.ts";
import { type BesideKeeper, keepBeside, readBeside } from "../store/half-typed.ts";
import { type Keeper, keepCase } from "../store/keeper.ts";
import { createCase, type HeldCase, holdCase, openCase } from "../store/open-case.ts";
import { INVENTED } from "./invented/index.ts";
import { played } from "./invented/play.ts";

type OnDesk = {
  readonly held: HeldCase;
  readonly keeper: Keeper;
  readonly clock: Clock;
  readonly beside: BesideKeeper;
};

/** What the start screen asks of a new case; the protocol by its name. */
type Asked = { readonly operator: string; readonly label: string; readonly protocol: string };

export type CaseDesk = ReturnType<typeof openDesk>;

/** A desk over the folder of cases; a new case carries one of the protocols, the first unless another is chosen. */
export function openDesk(folder: string, protocols: readonly Protocol[] = SHIPPED) {
  let tell: (message: AppMessage) => void = () => {};
  let onDesk: OnDesk | null = null;

  const hold = async (path: string): Promise<AppMessage> => {
    const held = await holdCase(path);
    if (!held.ok) return couldNot(held);
    const { file } = held.value;
    const steps = recordedSteps(file.entries);
    const earlyBy = startsBefore(file, openClock(realSources, steps).now());
    const keeper = keepCase({
      path: held.value.path,
      file,
      onSaved: (seq) => tell({ name: "saved", seq }),
      onFault: (why) => tell({ name: "not-saved", why }),
    });
    const clock = openClock(realSources, steps - (earlyBy ?? 0));
    onDesk = { held: held.value, keeper, clock, beside: keepBeside(held.value.path) };
    return {
      name: "opened",
      file,
      clockEarlyBy: earlyBy,
      halfTyped: readHalfTyped(await readBeside(held.value.path)),
    };
  };

  return {
    folder,
    protocols: protocols.map(({ name }) => name),
    /** News of saving goes to `listener` from now on. */
    listen(listener: (message: AppMessage) => void): void {
      tell = listener;
    },
    /** The clock of the case on the desk. */
    clock: (): Clock | null => onDesk?.clock ?? null,
    keep(file: CaseFile): void {
      onDesk?.keeper.keep(file);
    },
    /** What is half typed waits beside the case, should the program end before it is written. */
    keepHalfTyped(model: Model): void {
      onDesk?.beside.keep(halfTypedOf(model));
    },
    /** Tries to save a last time and lets the case go. */
    async letGo(): Promise<void> {
      const leaving = onDesk;
      onDesk = null;
      await leaving?.beside.close();
      await leaving?.keeper.close();
      await leaving?.held.release();
    },
    list: (): Promise<CaseLine[]> => listCases(folder),
    hold,
    /** A case to look at, which others may be writing. */
    async read(path: string): Promise<AppMessage> {
      const opened = await openCase(path);
      return opened.ok ? { name: "reviewed", file: opened.value.file, path } : { ...couldNot(opened), path };
    },
    async create({ operator, label, protocol }: Asked): Promise<AppMessage> {
      const now = openClock().now();
      const carried = protocols.find(({ name }) => name === protocol) ?? (protocols[0] as Protocol);
      const made = await createCase({ folder, label: label || undefined, protocol: carried, operator, now });
      return made.ok ? await hold(made.value.path) : couldNot(made);
    },
    samples: (): CaseFile[] =>
      INVENTED.flatMap((script) => {
        const file = played(script);
        return file.ok ? [file.value] : [];
      }),
  };
}

const couldNot = (outcome: Outcome<unknown>) => ({
  name: "could-not" as const,
  fault: outcome.ok ? "" : `The case cannot be opened: ${outcome.fault}`,
});
