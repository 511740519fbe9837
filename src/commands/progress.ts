/** How far long work has come, in one line on standard error that goes when the work is done. */

/** A line a tenth of a second is as much as anybody reads. */
const EACH_MS = 100;
const AWAY = "\r\x1b[K";

type Progress = {
  readonly at: (done: number, all: number) => void;
  readonly end: () => void;
};

/** Says nothing where standard error is no terminal, or the work takes no time. */
export function progressOf(what: string, stream = process.stderr): Progress {
  let said = performance.now();
  let isThere = false;
  return {
    at(done, all) {
      if (!stream.isTTY || performance.now() - said < EACH_MS) return;
      said = performance.now();
      isThere = true;
      stream.write(`${AWAY}${what}: ${done} of ${all} (Ctrl-C stops)`);
    },
    end() {
      if (isThere) stream.write(AWAY);
      isThere = false;
    },
  };
}
