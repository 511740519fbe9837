/** The fields that the shipped protocols ask for, in the order in which the eye goes over pump and report. */

/** Names of readings the record knows. */
export const defaultReadingFields = [
  "flow",
  "meanPressure",
  "linePressure",
  "centralVenousPressure",
  "arterialTemperature",
  "venousTemperature",
  "nasopharyngealTemperature",
  "bladderTemperature",
  "venousSaturation",
  "cerebralLeft",
  "cerebralRight",
  "sweep",
  "inspiredOxygen",
  "volatile",
  "vacuum",
  "reservoir",
  "haematocrit",
];

/** Names of gas and laboratory values the record knows. */
export const defaultGasFields = [
  "ph",
  "carbonDioxide",
  "oxygen",
  "bicarbonate",
  "baseExcess",
  "saturation",
  "haemoglobin",
  "haematocrit",
  "sodium",
  "potassium",
  "calcium",
  "glucose",
  "lactate",
];
