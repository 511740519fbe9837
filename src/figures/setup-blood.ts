/** Blood, prime and oxygen as they will be when bypass begins: the part of the setup figures that hangs together. */
import { plain } from "../format/number.ts";
import { type Protocol, solutionOf } from "../protocol/protocol.ts";
import { allowableBloodLoss } from "./blood-loss.ts";
import { bloodVolume, bloodVolumePerKg } from "./blood-volume.ts";
import { surfaceOf } from "./body-surface.ts";
import { type Figure, known, missing } from "./figure.ts";
import { flowIndexOf } from "./flow-plan.ts";
import { fullFlow } from "./full-flow.ts";
import { circulatingVolume, type Meeting, predictedHaematocrit, ultrafiltrateFor } from "./haemodilution.ts";
import { haemoglobinAt, patientHaematocrit } from "./haemoglobin.ts";
import { flowForDelivery, oxygenContent, oxygenDeliveryIndex } from "./oxygen.ts";
import type { Patient, Plan } from "./patient.ts";
import { crystalloidOf, solutionDose } from "./planned-doses.ts";
import { primeCells, primeTotal, replaceablePrime, tubingTotal } from "./prime.ts";
import { bloodForPrime, bloodOnTop } from "./red-cells.ts";

/** What the figures rest on; `primed` is the prime recorded in mL, where it has been. */
export type Setup = {
  readonly patient: Patient;
  readonly plan: Plan;
  readonly protocol: Protocol;
  readonly primed: number | null;
};

export type Named = readonly [name: string, figure: Figure];

/** Blood and prime as they meet, with crystalloid of arrest solution or without. */
function meetingOf({ patient, plan, protocol, primed }: Setup, other = 0): Meeting {
  return {
    bloodVolume: bloodVolume(patient, protocol),
    haematocrit: patientHaematocrit(patient),
    prime: primed === null ? primeTotal(plan, protocol) : known(primed, "mL", "as recorded"),
    cells: primeCells(plan, protocol).value ?? 0,
    other,
    displaced: 0,
  };
}

/** Blood volume, prime, the haematocrit they make, and what it takes to raise it. */
export function bloodFigures(setup: Setup): readonly Named[] {
  const { patient, plan, protocol } = setup;
  const meeting = meetingOf(setup);
  const floor = protocol.watch.haematocritFloor.value;
  return [
    ["blood volume", meeting.bloodVolume],
    ["blood volume by weight", bloodVolumePerKg(meeting.bloodVolume, patient)],
    ["prime", meeting.prime],
    ...(plan.tubing?.length ? [["tubing holds", tubingTotal(plan, protocol)] as const] : []),
    ["predicted haematocrit", predictedHaematocrit(meeting)],
    ["haematocrit with first dose in", withFirstDose(setup)],
    ...raising(setup, meeting),
    [
      `blood loss down to ${plain(floor)} %`,
      allowableBloodLoss(meeting.bloodVolume, meeting.haematocrit, floor),
    ],
  ];
}

function withFirstDose(setup: Setup): Figure {
  const crystalloid = firstCrystalloid(setup);
  return crystalloid.value === null
    ? missing("%", crystalloid.working)
    : predictedHaematocrit(meetingOf(setup, crystalloid.value));
}

/** The crystalloid in the first dose of the planned arrest solution, in mL. */
export function firstCrystalloid({ patient, plan, protocol }: Setup): Figure {
  const solution = solutionOf(protocol, plan.solution);
  if (!solution) return missing("mL", "no solution planned");
  return crystalloidOf(solutionDose(solution.first, patient), solution);
}

/** Three ways up to the haematocrit that is planned, else to the protocol's floor. */
function raising({ plan, protocol }: Setup, meeting: Meeting): readonly Named[] {
  const wanted = plan.targetHaematocrit ?? protocol.watch.haematocritFloor.value;
  const volume = circulatingVolume(meeting);
  const haematocrit = predictedHaematocrit(meeting);
  const product = protocol.circuit.packedCellHaematocrit.value;
  const need = { volume, haematocrit, wanted, product };
  const to = `to ${plain(wanted)} %`;
  return [
    [`red cells on top, ${to}`, bloodOnTop(need)],
    [`red cells for prime, ${to}`, bloodForPrime(need, replaceablePrime(meeting.prime, plan, protocol))],
    [`ultrafiltrate, ${to}`, ultrafiltrateFor(wanted, volume, haematocrit)],
  ];
}

/** What arterial blood is supposed to be on bypass while nobody has measured it: in % and mmHg. */
const SUPPOSED = { saturation: 100, oxygen: 200 };

/** Oxygen in the predicted blood, what full flow delivers of it, and the flow that the protocol's threshold asks for. */
export function oxygenFigures(setup: Setup): readonly Named[] {
  const { patient, plan, protocol } = setup;
  const haemoglobin = haemoglobinAt(predictedHaematocrit(meetingOf(setup)), patient);
  const content = supposedContent(haemoglobin, protocol);
  const surface = surfaceOf(setup);
  const index = flowIndexOf(fullFlow(patient, plan, protocol), surface);
  const target = protocol.watch.oxygenDelivery.value;
  return [
    ["predicted haemoglobin", haemoglobin],
    ["oxygen content", content],
    ["oxygen delivery at full flow", oxygenDeliveryIndex(content, index)],
    [`flow for a delivery of ${plain(target)}`, flowForDelivery(target, surface, content)],
  ];
}

function supposedContent(haemoglobin: Figure, { oxygen }: Protocol): Figure {
  if (haemoglobin.value === null) return missing("mL/dL", haemoglobin.working);
  const content = oxygenContent(haemoglobin.value, SUPPOSED.saturation, SUPPOSED.oxygen, oxygen);
  return { ...content, working: `saturation and pO2 supposed: ${content.working}` };
}
