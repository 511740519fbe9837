/** The cautions that the program, its README and every report carry. */

export const CAUTIONS: readonly string[] = [
  "pumpside is a record and a calculator. It is not an alarm, it is not a monitor, and it controls nothing.",
  "Check every dose, volume and figure yourself. Your local protocol and the licensed people in the room decide.",
  "It is not a medical device and has not been validated for clinical use.",
];
