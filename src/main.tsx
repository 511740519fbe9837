/** The composition root: arguments in, an exit code out, and one sentence for whatever nobody expected. */
import { runCommandLine } from "./commands/command-line.ts";
import { CASE_FAULT, complain } from "./commands/speak.ts";

const VERSION = "0.1.0";

/** Settles when the verb has been run. */
export const ended: Promise<void> = runCommandLine(process.argv.slice(2), VERSION).then(
  endWith,
  (error: unknown) => {
    const reason = error instanceof Error ? error.message : String(error);
    endWith(
      complain(
        `something went wrong that should not have: ${reason}. What the screen called saved is on the disk.`,
        CASE_FAULT,
      ),
    );
  },
);

function endWith(code: number): void {
  process.exitCode = code;
}
