/** The memory of this program: whether it is nearly used up, and keeping it small. */
import { getHeapSpaceStatistics, getHeapStatistics, setFlagsFromString } from "node:v8";

/** Beyond this share of it little is left for saving. */
const NEARLY_ALL = 0.85;

/** Whether the program's memory is nearly used up. */
export function memoryIsLow(): boolean {
  const { used_heap_size: used, heap_size_limit: limit } = getHeapStatistics();
  return used > limit * NEARLY_ALL;
}

/** Bytes of young objects. A drawing makes 2.5 MB of them, and what does not die young costs far more. */
const ROOM_FOR_A_DRAWING = 4 * 1024 * 1024;

/** How much the heap may grow before all of it is looked through again, in percent of what was left the last time. */
const GROWTH = 20;

/**
 * Has the heap stay near what is in use, for a program that is open for hours; to be called now and then. Left alone V8
 * gives young objects more and more room while keys are typed, 100 MB and more, and takes none of it back from a program
 * that draws a clock. While a long case is read (`mayGrow` false) they get no more at all: reading would take far more than
 * drawing needs, and is no slower without it.
 */
export function keepHeapSmall(mayGrow = true): void {
  const young = getHeapSpaceStatistics().find(({ space_name: name }) => name === "new_space");
  const mayDouble = mayGrow && young !== undefined && young.space_size <= ROOM_FOR_A_DRAWING;
  setFlagsFromString(`--semi-space-growth-factor=${mayDouble ? 2 : 1}`);
  setFlagsFromString(`--heap-growing-percent=${GROWTH}`);
  // So little lives that waking other threads for it costs more than they save.
  setFlagsFromString("--no-parallel-scavenge");
}
