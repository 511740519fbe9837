/** The paediatric protocol as shipped: a unit copies it and decides for itself. */
import { CITED, inAdults } from "./citations.ts";
import { COMMON_PRACTICE, FROM_MEMORY } from "./decision.ts";
import { defaultChecklists } from "./default-checklists.ts";
import { circuitPrimedWith } from "./default-circuit.ts";
import { defaultDrugs } from "./default-drugs.ts";
import { defaultGasFields, defaultReadingFields } from "./default-fields.ts";
import { defaultFluidsIn, defaultFluidsOut } from "./default-fluids.ts";
import { defaultOxygen, defaultShownUnits, defaultTemperature } from "./default-limits.ts";
import { defaultMarks } from "./default-marks.ts";
import { defaultRoutes, defaultSolutions, perKg } from "./default-solutions.ts";
import { PROTOCOL_FORMAT, PROTOCOL_VERSION, type Protocol } from "./protocol.ts";

const flowStep = (upTo: number | null, value: number) => ({ upTo, value, source: CITED.weightFlow });
const bloodStep = (upTo: number | null, value: number) => ({ upTo, value, source: CITED.weightBlood });

export const paediatricProtocol: Protocol = {
  format: PROTOCOL_FORMAT,
  version: PROTOCOL_VERSION,
  name: "paediatric",
  shown: defaultShownUnits,
  body: {
    // Haycock was fitted to infants and children; in a newborn DuBois reads 7 % less.
    surfaceFormula: "haycock",
    bloodVolumeRule: "bands",
    bloodVolumeBands: [
      bloodStep(10, 85),
      bloodStep(20, 80),
      bloodStep(30, 75),
      bloodStep(40, 70),
      bloodStep(null, 65),
    ],
    flowIndex: { value: 2.6, source: FROM_MEMORY },
    flowByWeight: [
      flowStep(3, 200),
      flowStep(10, 150),
      flowStep(15, 125),
      flowStep(30, 100),
      flowStep(55, 75),
      flowStep(null, 65),
    ],
    fullFlowBy: "weight",
  },
  coagulation: {
    heparinPerKg: { value: 400, source: COMMON_PRACTICE },
    heparinStrength: { value: 1000, source: COMMON_PRACTICE },
    heparinIuPerMg: { value: 100, source: COMMON_PRACTICE },
    actForCannulation: { value: 300, source: COMMON_PRACTICE },
    actForBypass: { value: 480, source: inAdults(CITED.actBypass) },
    actRecheck: { value: 30, source: inAdults(CITED.everyHalfHour) },
    protamineRatio: { value: 1, source: inAdults(CITED.protamine) },
    protamineBase: "first",
    protamineStrength: { value: 10, source: FROM_MEMORY },
    protamineCap: { value: 2.6, source: FROM_MEMORY },
  },
  solutions: defaultSolutions({ first: perKg(30, 1000), repeat: perKg(15, 500) }),
  usualSolution: "one-to-four",
  solutionCountsAsFluid: true,
  routes: defaultRoutes(),
  temperature: defaultTemperature(inAdults),
  oxygen: defaultOxygen,
  watch: {
    meanPressure: { low: 30, high: 60, source: FROM_MEMORY },
    oxygenDelivery: { value: 340, source: FROM_MEMORY },
    oxygenExtraction: { value: 30, source: FROM_MEMORY },
    haematocritFloor: { value: 25, source: FROM_MEMORY },
    glucose: { low: 4, high: 10, source: inAdults(CITED.glucose) },
    potassium: { low: 3.5, high: 6, source: FROM_MEMORY },
    carbonDioxide: { low: 35, high: 45, source: inAdults(CITED.carbonDioxide) },
    urinePerKgPerHour: { value: 1, source: FROM_MEMORY },
    readingsEvery: { value: 10, source: COMMON_PRACTICE },
    gasEvery: { value: 30, source: inAdults(CITED.everyHalfHour) },
    readingsHold: { value: 15, source: COMMON_PRACTICE },
    gasHold: { value: 45, source: COMMON_PRACTICE },
  },
  fluidsIn: defaultFluidsIn,
  fluidsOut: defaultFluidsOut,
  drugs: defaultDrugs,
  marks: defaultMarks,
  // Red cells are left out: how many are needed is what the figures answer.
  circuit: circuitPrimedWith([
    { fluid: "crystalloid", name: "balanced crystalloid", ml: 250 },
    { fluid: "albumin", name: "albumin", ml: 50 },
    { fluid: "sodium-bicarbonate", name: "sodium bicarbonate", ml: 10 },
  ]),
  readingFields: defaultReadingFields,
  gasFields: defaultGasFields,
  checklists: defaultChecklists,
  operators: [],
};
