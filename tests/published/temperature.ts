/** Cooling and warming. */
import { minutesToTarget, warmingRate } from "../../src/figures/temperatures.ts";
import { given, runAt, typed } from "../helpers/typed-case.ts";
import { advises } from "./advised.ts";
import { group, type Section } from "./check.ts";

const GUIDELINE = "Engelman R et al. J Extra Corpor Technol 2015;47:145–154 (PMC4631211)";
const LISTED = "Engelman R et al. J Extra Corpor Technol 2015;47:145–154, as listed at guidelinecentral.com";

const outlet = (arterialTemperature: number) => advises({ arterialTemperature }, /^outlet-limit$/);
const cooling = (arterialTemperature: number, venousTemperature: number) =>
  advises({ arterialTemperature, venousTemperature }, /^cooling-gradient$/);
const warming = (arterialTemperature: number, venousTemperature: number) =>
  advises({ arterialTemperature, venousTemperature }, /^warming-gradient$/);

/** A patient warmed from 27.5 to 28 °C in a minute, with an order of 36.5 °C. */
function warmed() {
  const ordered = typed(["09:00 b", "09:55 t 36.5"]);
  const cold = given(ordered, { kind: "readings", values: { nasopharyngealTemperature: 27.5 } }, "09:59");
  return runAt(
    given(cold, { kind: "readings", values: { nasopharyngealTemperature: 28 } }, "10:00"),
    "10:00",
  );
}

const once = () =>
  runAt(
    given(typed(["09:00 b"]), { kind: "readings", values: { nasopharyngealTemperature: 28 } }, "10:00"),
    "10:00",
  );

export const temperature: Section = {
  name: "temperature",
  checks: [
    ...group({ what: "whether an arterial outlet is advised upon", source: GUIDELINE, sureness: "Q" }, [
      ["outlet-36.9", "36.9 °C", false, 0, () => outlet(36.9)],
      ["outlet-37.0", "37.0 °C", true, 0, () => outlet(37)],
    ]),
    ...group({ what: "whether a cooling gradient is advised upon", source: GUIDELINE, sureness: "Q" }, [
      ["cooling-10.0", "outlet 20.0 °C, venous 30.0 °C", false, 0, () => cooling(20, 30)],
      ["cooling-10.1", "outlet 20.0 °C, venous 30.1 °C", true, 0, () => cooling(20, 30.1)],
    ]),
    ...group({ what: "whether a warming gradient is advised upon", source: LISTED, sureness: "Q" }, [
      ["warming-30.0-4.0", "outlet 30.0 °C, venous 26.0 °C", false, 0, () => warming(30, 26)],
      ["warming-30.0-4.1", "outlet 30.0 °C, venous 25.9 °C", true, 0, () => warming(30, 25.9)],
      ["warming-29.9-9.9", "outlet 29.9 °C, venous 20.0 °C", false, 0, () => warming(29.9, 20)],
      ["warming-29.9-10.1", "outlet 29.9 °C, venous 19.8 °C", true, 0, () => warming(29.9, 19.8)],
    ]),
    ...group({ what: "warming at 0.5 °C/min", source: LISTED, sureness: "C" }, [
      ["rate", "27.5 °C, a minute later 28 °C", 0.5, 1e-9, () => warmingRate(warmed())],
      ["rate-of-one", "28 °C, read once", null, 0, () => warmingRate(once())],
      ["minutes", "28 °C to 36.5 °C", 17, 1e-9, () => minutesToTarget(warmed())],
    ]),
  ],
};
