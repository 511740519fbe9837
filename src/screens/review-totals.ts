/** The totals of a case as blocks of rows: volumes, arrest solution, heparin and ACT. */
import { givenMl } from "../figures/doses.ts";
import { ROUTE_NAMES } from "../figures/entry-words.ts";
import { type Figure, figureText } from "../figures/figure.ts";
import type { Run } from "../figures/run.ts";
import { fixed, grouped, plain, signed, UNKNOWN } from "../format/number.ts";
import { ROUTES } from "../record/routes.ts";
import { ofKind } from "../record/standing.ts";
import { type Block, named } from "./review-flow.ts";

/** Unknown is not nought: what was not recorded is a dash. */
export const totalBlocks = (run: Run): readonly Block[] => [
  volumesBlock(run),
  arrestBlock(run),
  coagulationBlock(run),
];

const mL = ({ value }: Figure) => (value === null ? UNKNOWN : `${fixed(value)} mL`);
const signedMl = ({ value }: Figure) => (value === null ? UNKNOWN : `${signed(value)} mL`);

function volumesBlock({ course: { balances }, pump, netToPatient }: Run): Block {
  return {
    title: "volumes",
    rows: [
      named("in", mL(balances.fluidIn)),
      named("urine", mL(balances.urine)),
      named("ultrafiltrate", mL(balances.ultrafiltrate)),
      named("other out", mL(balances.otherOut)),
      named("net", signedMl(balances.net)),
      named("returned", mL(balances.returned)),
      named("left in pump", mL(pump.left)),
      named("to patient", signedMl(netToPatient)),
    ],
  };
}

function arrestBlock({ course: { doses, balances } }: Run): Block {
  const byRoute = ROUTES.map(
    (route) => [ROUTE_NAMES[route], doses.filter((dose) => dose.route === route)] as const,
  );
  return {
    title: "arrest solution",
    rows: [
      named("given", doses.length === 0 ? UNKNOWN : `${plain(givenMl(doses))} mL in ${doses.length}`),
      ...byRoute
        .filter(([, those]) => those.length > 0)
        .map(([name, those]) => named(`  ${name}`, `${plain(givenMl(those))} mL in ${those.length}`)),
      named("crystalloid", mL(balances.arrestCrystalloid)),
    ],
  };
}

function coagulationBlock({ coagulation, course }: Run): Block {
  const acts = ofKind(course.record.facts, "act").map(({ entry }) => plain(entry.seconds));
  const { heparinTotal, heparinPerKg, protamineGiven } = coagulation;
  const iu = heparinTotal.value === null ? UNKNOWN : `${grouped(heparinTotal.value)} IU`;
  const each = heparinPerKg.value === null ? "" : `, ${figureText(heparinPerKg)}`;
  return {
    title: "heparin and ACT",
    rows: [
      named("heparin", iu + each),
      named("protamine", protamineGiven.value === null ? UNKNOWN : figureText(protamineGiven)),
      named("ACT", acts.length === 0 ? UNKNOWN : `${acts.join(" ")} s`),
    ],
  };
}
