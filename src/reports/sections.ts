/** Everything a report tells, in the order in which it is read: what came of it first, the whole log last. */
import type { Section } from "./blocks.ts";
import type { Report } from "./report.ts";
import { fluidsSection } from "./section-fluids.ts";
import { headSection, patientSection, summarySection } from "./section-head.ts";
import { logSection } from "./section-log.ts";
import { extremesSection, measuredSection } from "./section-measured.ts";
import { peopleSection, planSection } from "./section-people.ts";
import {
  checklistsSection,
  completenessSection,
  incidentsSection,
  indicatorsSection,
} from "./section-quality.ts";
import { arrestSection, coagulationSection, drugsSection, timesSection } from "./section-run.ts";
import { endSection, workingSection } from "./section-working.ts";

/** What is read first. */
export const openingSections = (report: Report): readonly Section[] => [
  headSection(report),
  summarySection(report),
];

/** All the rest. */
export const sectionsAfter = (report: Report): readonly Section[] => [
  patientSection(report),
  peopleSection(report),
  planSection(report),
  timesSection(report),
  arrestSection(report),
  fluidsSection(report),
  coagulationSection(report),
  drugsSection(report),
  extremesSection(report),
  indicatorsSection(report),
  incidentsSection(report),
  completenessSection(report),
  checklistsSection(report),
  measuredSection(report),
  workingSection(report),
  logSection(report),
  endSection(report),
];
