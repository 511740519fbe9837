/** The adult protocol as shipped: a unit copies it and decides for itself. */
import { CITED } from "./citations.ts";
import { COMMON_PRACTICE, FROM_MEMORY } from "./decision.ts";
import { defaultChecklists } from "./default-checklists.ts";
import { circuitPrimedWith } from "./default-circuit.ts";
import { defaultDrugs } from "./default-drugs.ts";
import { defaultGasFields, defaultReadingFields } from "./default-fields.ts";
import { defaultFluidsIn, defaultFluidsOut } from "./default-fluids.ts";
import { defaultOxygen, defaultShownUnits, defaultTemperature } from "./default-limits.ts";
import { defaultMarks } from "./default-marks.ts";
import { defaultRoutes, defaultSolutions, fixed } from "./default-solutions.ts";
import { PROTOCOL_FORMAT, PROTOCOL_VERSION, type Protocol } from "./protocol.ts";

export const adultProtocol: Protocol = {
  format: PROTOCOL_FORMAT,
  version: PROTOCOL_VERSION,
  name: "adult",
  shown: defaultShownUnits,
  body: {
    surfaceFormula: "dubois",
    bloodVolumeRule: "nadler",
    bloodVolumeBands: [{ upTo: null, value: 65, source: CITED.adultBlood }],
    flowIndex: { value: 2.4, source: CITED.flowIndex },
    flowByTemperature: [
      { upTo: 20, value: 1.2, source: FROM_MEMORY },
      { upTo: 25, value: 1.6, source: FROM_MEMORY },
      { upTo: 30, value: 2.0, source: FROM_MEMORY },
      { upTo: 34, value: 2.2, source: FROM_MEMORY },
      { upTo: null, value: 2.4, source: FROM_MEMORY },
    ],
    fullFlowBy: "index",
    leanMassAboveBmi: { value: 30, source: FROM_MEMORY },
  },
  coagulation: {
    heparinPerKg: { value: 400, source: CITED.heparin },
    heparinStrength: { value: 1000, source: COMMON_PRACTICE },
    heparinIuPerMg: { value: 100, source: COMMON_PRACTICE },
    actForCannulation: { value: 300, source: COMMON_PRACTICE },
    actForBypass: { value: 480, source: CITED.actBypass },
    actRecheck: { value: 30, source: CITED.everyHalfHour },
    protamineRatio: { value: 1, source: CITED.protamine },
    protamineBase: "first",
    protamineStrength: { value: 10, source: FROM_MEMORY },
    protamineCap: { value: 2.6, source: FROM_MEMORY },
  },
  solutions: defaultSolutions({ first: fixed(1000), repeat: fixed(300) }),
  usualSolution: "blood-4-1",
  solutionCountsAsFluid: true,
  routes: defaultRoutes({
    root: { low: 70, high: 100, source: FROM_MEMORY },
    "coronary-sinus": { low: 20, high: 40, source: FROM_MEMORY },
  }),
  temperature: defaultTemperature(),
  oxygen: defaultOxygen,
  watch: {
    meanPressure: { low: 50, high: 80, source: CITED.meanPressure },
    oxygenDelivery: { value: 280, source: CITED.oxygenDelivery },
    oxygenExtraction: { value: 30, source: FROM_MEMORY },
    haematocritFloor: { value: 21, source: FROM_MEMORY },
    glucose: { low: 4, high: 10, source: CITED.glucose },
    potassium: { low: 3.5, high: 6, source: FROM_MEMORY },
    carbonDioxide: { low: 35, high: 45, source: CITED.carbonDioxide },
    urinePerKgPerHour: { value: 0.5, source: FROM_MEMORY },
    readingsEvery: { value: 15, source: COMMON_PRACTICE },
    gasEvery: { value: 30, source: CITED.everyHalfHour },
    readingsHold: { value: 20, source: COMMON_PRACTICE },
    gasHold: { value: 45, source: COMMON_PRACTICE },
  },
  fluidsIn: defaultFluidsIn,
  fluidsOut: defaultFluidsOut,
  drugs: defaultDrugs,
  marks: defaultMarks,
  circuit: circuitPrimedWith([
    { fluid: "crystalloid", name: "balanced crystalloid", ml: 1300 },
    { fluid: "mannitol", name: "mannitol", ml: 100 },
  ]),
  readingFields: defaultReadingFields,
  gasFields: defaultGasFields,
  checklists: defaultChecklists,
  operators: [],
};
