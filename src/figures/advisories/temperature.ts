/** Advisories about cooling and warming. */
import { fixed, plain } from "../../format/number.ts";
import { latestReading } from "../measured.ts";
import { bodyTemperature, gradientOf, warmingRate } from "../temperatures.ts";
import { type Advisory, against, broughtBy, bypassOn, isAbove, isBelow, toldApart } from "./advisory.ts";

/** Broken at the limit, not only above it. */
const outletLimit: Advisory = {
  id: "outlet-limit",
  reads: ["temperature.outletLimit"],
  says(run) {
    const outlet = latestReading(run, "arterialTemperature");
    const { value, source } = run.course.protocol.temperature.outletLimit;
    if (!bypassOn(run) || !outlet?.holds || isBelow(outlet.value, value)) return null;
    return {
      text: `Arterial outlet ${fixed(outlet.value, 1)} °C is not below ${plain(value)} °C.`,
      source,
      priority: "high",
      ...broughtBy(outlet),
    };
  },
};

const coolingGradient: Advisory = {
  id: "cooling-gradient",
  reads: ["temperature.coolingGradient"],
  says(run) {
    const { direction, figure, last } = gradientOf(run);
    const { value, source } = run.course.protocol.temperature.coolingGradient;
    if (!bypassOn(run) || direction !== "cooling" || figure.value === null || !last) return null;
    if (!isAbove(figure.value, value)) return null;
    const text = `${against("Cooling: the gradient of", figure.value, value, "Cel", 1)}.`;
    return { text, source, priority: "medium", ...broughtBy(last) };
  },
};

/** One limit with a cold outlet, a narrower one from the protocol's temperature on. */
const warmingGradient: Advisory = {
  id: "warming-gradient",
  reads: ["temperature.warmingGradientCold", "temperature.warmingGradientWarm", "temperature.warmFrom"],
  says(run) {
    const { direction, figure, last } = gradientOf(run);
    const outlet = latestReading(run, "arterialTemperature");
    if (!bypassOn(run) || direction !== "warming" || figure.value === null || !last || !outlet) return null;
    const { warmFrom, warmingGradientCold, warmingGradientWarm } = run.course.protocol.temperature;
    const warm = !isBelow(outlet.value, warmFrom.value);
    const { value, source } = warm ? warmingGradientWarm : warmingGradientCold;
    if (!isAbove(figure.value, value)) return null;
    const where = `with the outlet ${warm ? "at or above" : "below"} ${plain(warmFrom.value)} °C`;
    const text = `${against("Rewarming: the gradient of", figure.value, value, "Cel", 1)} ${where}.`;
    return { text, source, priority: "medium", ...broughtBy(last) };
  },
};

const warmingTooFast: Advisory = {
  id: "warming-rate",
  reads: ["temperature.warmingRate", "temperature.warmFrom"],
  says(run) {
    const rate = warmingRate(run).value;
    const body = bodyTemperature(run);
    const outlet = latestReading(run, "arterialTemperature");
    const { warmFrom, warmingRate: limit } = run.course.protocol.temperature;
    if (!bypassOn(run) || rate === null || !body || !outlet?.holds) return null;
    if (isBelow(outlet.value, warmFrom.value) || !isAbove(rate, limit.value)) return null;
    const [says, bound] = toldApart(rate, limit.value, 1);
    return {
      text: `Rewarming by ${says} °C/min is faster than ${bound} °C/min (${body.latest.name}).`,
      source: limit.source,
      priority: "medium",
      ...broughtBy(body.latest),
    };
  },
};

export const temperatureAdvisories: readonly Advisory[] = [
  outletLimit,
  coolingGradient,
  warmingGradient,
  warmingTooFast,
];
