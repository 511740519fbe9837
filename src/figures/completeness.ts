/** How complete the record is, against the published content of a perfusion record in our own words. */
import { completenessOfCare } from "./completeness-care.ts";
import { completenessOfCase } from "./completeness-case.ts";
import type { Item } from "./completeness-item.ts";
import { completenessOfRun } from "./completeness-run.ts";
import type { Run } from "./run.ts";

/** Every item with its state, the standard's edition and number beside it. It follows from the course alone. */
export const completenessOf = ({ course }: Pick<Run, "course">): readonly Item[] => [
  ...completenessOfCase(course),
  ...completenessOfRun(course),
  ...completenessOfCare(course),
];
