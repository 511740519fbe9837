/** The desk of a training run: a case kept in a file of its own, the trainer's clock, and orders in the place of news. */
import type { AppMessage } from "../console/app.ts";
import { keepCase } from "../store/keeper.ts";
import { type CaseDesk, type LetGo, NOTHING_LET_GO } from "./case-desk.ts";
import { OVER, type Trainer, WAITING } from "./trainer.ts";

/** Milliseconds between two looks at the clock. */
const EACH_MS = 100;
const NOTHING_ELSE: AppMessage = { name: "could-not", fault: "A training run has no other cases." };

/** `path` is where the case is kept, so that saved is true. */
export function trainingDesk(trainer: Trainer, path: string): CaseDesk {
  let tell: (message: AppMessage) => void = () => {};
  let asked = "";
  let shown: string | null = null;
  const ours = new Set([WAITING, OVER]);
  const keeper = keepCase({
    path,
    file: { ...trainer.opened, entries: [] },
    onSaved: (seq) => tell({ name: "saved", seq }),
    onFault: (why) => tell({ name: "not-saved", why }),
  });
  keeper.keep(trainer.opened);

  /** The order stands in the row for news until it has been answered, and never takes the place of other news. */
  const look = (): void => {
    asked = trainer.look();
    if (shown === asked || (shown !== null && !ours.has(shown))) return;
    ours.add(asked);
    tell({ name: "told", words: asked });
  };
  const looking = setInterval(look, EACH_MS);
  let closed: Promise<LetGo> | null = null;

  return {
    folder: "",
    protocols: [],
    listen(listener) {
      tell = listener;
    },
    clock: () => ({ now: trainer.now, check: () => null }),
    keep(file) {
      trainer.keep(file);
      keeper.keep(file);
    },
    keepHalfTyped({ mode, notice }) {
      // While a line is open the row is the line's; the order comes back behind it.
      shown = mode.name === "plain" ? notice : asked;
    },
    letGo() {
      clearInterval(looking);
      closed ??= keeper.close().then((closing) => ({ ...NOTHING_LET_GO, ...closing }));
      return closed;
    },
    list: async () => [],
    hold: async () => NOTHING_ELSE,
    read: async () => NOTHING_ELSE,
    create: async () => NOTHING_ELSE,
    samples: async () => [],
  };
}
