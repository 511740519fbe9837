/** The desk: the one case that is being written, with its lock, its keeper and its clock, and the ways to others. */
import type { AppMessage } from "../console/app.ts";
import { halfTypedOf, readHalfTyped } from "../console/half-typed.ts";
import type { Model } from "../console/model.ts";
import type { CaseLine, TakeOver } from "../console/start.ts";
import type { Outcome } from "../format/outcome.ts";
import { type Protocol, SHIPPED_NAMES } from "../protocol/protocol.ts";
import { SHIPPED } from "../protocol/shipped.ts";
import type { CaseFile } from "../record/case.ts";
import {
  type Clock,
  openClock,
  realSources,
  recordedSteps,
  type Sources,
  startsBefore,
} from "../store/clock.ts";
import { type BesideKeeper, keepBeside, readBeside } from "../store/half-typed.ts";
import { type Closing, type Keeper, keepCase } from "../store/keeper.ts";
import { keepHeapSmall } from "../store/memory.ts";
import { createCase, type Held, type HeldCase, holdCase, openCase, toldOf } from "../store/open-case.ts";
import { plain, type Safe } from "../store/safe.ts";
import { copiesOf, copyFolder, copyOf, keepCopy } from "../store/second-copy.ts";
import { forgetUnsaved, keepUnsaved } from "../store/unsaved.ts";
import { within } from "../store/waiting.ts";
import { casesIn } from "./cases.ts";

type OnDesk = {
  readonly held: HeldCase;
  readonly keeper: Keeper;
  /** The keeper of the second copy, where there is a folder for it. */
  readonly copy: Keeper | null;
  readonly clock: Clock;
  readonly beside: BesideKeeper;
  /** The case as it is on the screen. */
  readonly newest: CaseFile;
};

/** What came of letting a case go. */
export type LetGo = Closing & {
  /** The case that was let go; empty where none was held. */
  readonly path: string;
  /** Where the whole case lies, should its own file lack something; `null` where it lies nowhere. */
  readonly keptAt: string | null;
};

export const NOTHING_LET_GO: LetGo = { path: "", unsaved: 0, hanging: false, keptAt: null };

/** What the start screen asks of a new case; the protocol by its name. */
type Asked = { readonly operator: string; readonly label: string; readonly protocol: string };

export type CaseDesk = ReturnType<typeof openDesk>;

type DeskTools = {
  /** The unit's own protocol: a new case carries it, unless one is chosen that comes with the program. */
  readonly own?: Protocol | null;
  /** The folder for second copies. */
  readonly copyTo?: string | null;
  readonly sources?: Sources;
  /** What the cases, and what is half typed, are kept in. */
  readonly safe?: Safe;
};

/** A desk over the folder of cases. */
export function openDesk(folder: string, tools: DeskTools = {}) {
  const { own = null, copyTo = copyFolder(), sources = realSources, safe = plain } = tools;
  let tell: (message: AppMessage) => void = () => {};
  let onDesk: OnDesk | null = null;
  // A long list that nobody waits for any longer keeps neither the run nor the program's end waiting.
  let listing = new AbortController();

  const hold = async (path: string, takeOver: TakeOver | "none" = "none"): Promise<AppMessage> => {
    keepHeapSmall(false);
    const held = await holdCase(path, { takeOver, copies: copiesOf(path, copyTo), safe });
    if (!held.ok) return heldByOther(path, held);
    listing.abort();
    const { asRead, ahead } = held.value;
    const file = ahead ?? held.value.file;
    let unsaved = ahead;
    const steps = recordedSteps(file.entries);
    const earlyBy = startsBefore(file, openClock(sources, steps).now());
    const keeper = keepCase({
      path: held.value.path,
      file: held.value.file,
      asRead,
      safe,
      onSaved: (seq) => {
        tell({ name: "saved", seq });
        if (unsaved === null || seq < unsaved.entries.length) return;
        void forgetUnsaved(held.value.path, unsaved, safe);
        unsaved = null;
      },
      onFault: (why) => tell({ name: "not-saved", why }),
      onForeign: (words) => tell({ name: "told", words }),
    });
    const clock = openClock(sources, steps - (earlyBy ?? 0));
    const copy = copyTo === null ? null : copying(copyTo, { ...held.value, file });
    if (ahead !== null) keeper.keep(ahead);
    onDesk = {
      held: held.value,
      keeper,
      copy,
      clock,
      beside: keepBeside(held.value.path, safe),
      newest: file,
    };
    return {
      name: "opened",
      file,
      saved: held.value.file.entries.length,
      told: toldOf(held.value),
      clockEarlyBy: earlyBy,
      halfTyped: readHalfTyped(await readBeside(held.value.path, safe)),
    };
  };

  /** The second copy where that holds everything, else what this computer has room for. */
  const keptElsewhere = (path: string, newest: CaseFile, inCopy: boolean): Promise<string | null> =>
    inCopy && copyTo !== null
      ? Promise.resolve(copyOf(path, copyTo))
      : within(PATIENCE, keepUnsaved(path, newest, safe), null);

  const copying = (to: string, { path, file }: HeldCase): Keeper =>
    keepCopy(to, {
      path,
      file,
      safe,
      onSaved: (seq) => tell({ name: "copied", seq }),
      onFault: (why) => tell({ name: "not-copied", why }),
    });

  return {
    folder,
    /** The names of those that a new case can carry, the usual one first. */
    protocols: [...(own ? [own.name] : []), ...SHIPPED_NAMES],
    /** News of saving goes to `listener` from now on. */
    listen(listener: (message: AppMessage) => void): void {
      tell = listener;
    },
    /** The clock of the case on the desk. */
    clock: (): Clock | null => onDesk?.clock ?? null,
    keep(newest: CaseFile): void {
      if (onDesk === null) return;
      onDesk = { ...onDesk, newest };
      onDesk.keeper.keep(newest);
      onDesk.copy?.keep(newest);
    },
    /** What is half typed waits beside the case, should the program end before it is written. */
    keepHalfTyped(model: Model): void {
      onDesk?.beside.keep(halfTypedOf(model));
    },
    /** Tries to save a last time and lets the case go; what came of it. A disk that does not answer is not waited for. */
    async letGo(): Promise<LetGo> {
      listing.abort();
      if (onDesk === null) return NOTHING_LET_GO;
      const { keeper, copy, beside, held, newest } = onDesk;
      onDesk = null;
      const [closing, copyClosing] = await Promise.all([keeper.close(), copy?.close(COPY_PATIENCE)]);
      const inCopy = copyClosing?.unsaved === 0;
      const keptAt = closing.unsaved === 0 ? null : await keptElsewhere(held.path, newest, inCopy);
      await within(PATIENCE, Promise.all([beside.close(), held.release()]), null);
      const hanging = closing.hanging || copyClosing?.hanging === true;
      return { path: held.path, unsaved: closing.unsaved, hanging, keptAt };
    },
    list(): Promise<CaseLine[]> {
      listing = new AbortController();
      return casesIn(folder, safe, listing.signal);
    },
    hold,
    /** A case to look at, which others may be writing. */
    async read(path: string): Promise<AppMessage> {
      const opened = await openCase(path, copiesOf(path, copyTo), safe);
      return opened.ok ? { name: "reviewed", file: opened.value.file, path } : { ...couldNot(opened), path };
    },
    async create({ operator, label, protocol }: Asked): Promise<AppMessage> {
      const now = openClock(sources).now();
      const shipped = SHIPPED.find(({ name }) => name === protocol) ?? (SHIPPED[0] as Protocol);
      const carried = own?.name === protocol ? own : shipped;
      const made = await createCase({
        folder,
        label: label || undefined,
        protocol: carried,
        operator,
        now,
        safe,
      });
      return made.ok ? await hold(made.value.path) : couldNot(made);
    },
    async samples(): Promise<CaseFile[]> {
      const [{ INVENTED }, { played }] = await Promise.all([
        import("./invented/index.ts"),
        import("./invented/play.ts"),
      ]);
      return INVENTED.flatMap((script) => {
        const file = played(script);
        return file.ok ? [file.value] : [];
      });
    },
  };
}

/** Milliseconds that leaving waits for the second folder, and for what lies beside the case. */
const COPY_PATIENCE = 2000;
const PATIENCE = 2000;

function heldByOther(path: string, held: Held): AppMessage {
  if (held.ok || !held.mayBeTaken || held.mayBeTaken === "none") return couldNot(held);
  return { name: "locked", path, fault: held.fault, takeOver: held.mayBeTaken };
}

const couldNot = (outcome: Outcome<unknown>) => ({
  name: "could-not" as const,
  fault: outcome.ok ? "" : `The case cannot be opened: ${outcome.fault}`,
});
