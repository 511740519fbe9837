/** How much of the memory that this program may use is in use. */
import { getHeapStatistics } from "node:v8";

/** Beyond this share of it little is left for saving. */
const NEARLY_ALL = 0.85;

/** Whether the program's memory is nearly used up. */
export function memoryIsLow(): boolean {
  const { used_heap_size: used, heap_size_limit: limit } = getHeapStatistics();
  return used > limit * NEARLY_ALL;
}
