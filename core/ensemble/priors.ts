import { closurePriors } from "../cooler/closures.ts";
import type { Spread } from "../matter/spread.ts";
import { skyPriors } from "../sky/closures.ts";

/** How the values between and beyond the three stated ones lie. */
export type Scale = "linear" | "log" | "share";

/** An input that nobody knows: median, 10 % and 90 %, and where it comes from. */
export interface InputPrior extends Spread {
  scale: Scale;
  source: "engineering-judgement" | "common-practice" | "sintef-2023";
}

const judged = (p50: number, p10: number, p90: number, scale: Scale): InputPrior => ({
  p50,
  p10,
  p90,
  scale,
  source: "engineering-judgement",
});
const usual = (p50: number, p10: number, p90: number, scale: Scale): InputPrior => ({
  ...judged(p50, p10, p90, scale),
  source: "common-practice",
});

/** What of a trip file is in doubt; see `tripPriors`. */
export type TripPriorKey =
  | "unknownBuild_frac"
  | "measured_frac"
  | "gasketSeal_frac"
  | "gasketLeak_frac"
  | "bareSeal_frac"
  | "bareLeak_frac"
  | "zipSeal_frac"
  | "zipLeak_frac"
  | "colorShift_frac"
  | "bodyTold_K"
  | "bodyAssumed_K"
  | "openings_frac"
  | "openFor_frac"
  | "bagWeight_frac"
  | "pieceWeight_frac"
  | "liquid_frac"
  | "iceTold_K"
  | "shopIceAssumed_K"
  | "freezerAssumed_K"
  | "foodTold_K"
  | "frozenAssumed_K"
  | "fridgeAssumed_K"
  | "ambientAssumed_K"
  | "foodHeat_frac"
  | "weatherAssumed_K"
  | "cloudShift_frac"
  | "wind_frac";

/**
 * What a trip file says and nobody knows exactly. `…Told` holds where the person gave the value, `…Assumed` where it was
 * filled in for them; factors and shifts apply to the value that stands in the trip.
 *
 * @source engineering-judgement, common-practice
 */
export const tripPriors: Readonly<Record<TripPriorKey, InputPrior>> = {
  /** A cooler of a named build: the conductivity of its foam, and so nearly the whole conductance / what the build says. */
  unknownBuild_frac: judged(1.05, 0.85, 1.4, "log"),
  /** A measured conductance. */
  measured_frac: judged(1, 0.95, 1.05, "log"),
  /** Lid joint and leak / what the kind of joint says: gasket, none, zip. */
  gasketSeal_frac: judged(1, 0.25, 3, "log"),
  gasketLeak_frac: judged(1, 0.2, 4, "log"),
  bareSeal_frac: judged(1, 0.33, 2.67, "log"),
  bareLeak_frac: judged(1, 0.2, 4, "log"),
  zipSeal_frac: judged(1, 0.4, 2.4, "log"),
  zipLeak_frac: judged(1, 0.3, 3, "log"),
  colorShift_frac: judged(0, -0.07, 0.1, "linear"),
  bodyTold_K: judged(0, -2, 2, "linear"),
  bodyAssumed_K: judged(0, -7, 10, "linear"),
  openings_frac: judged(1, 0.7, 1.7, "log"),
  openFor_frac: judged(1, 0.5, 2.5, "log"),
  /** Bagged loose ice as sold, and pieces that were weighed or frozen by volume. */
  bagWeight_frac: usual(0.97, 0.9, 1.02, "log"),
  pieceWeight_frac: usual(1, 0.97, 1.03, "log"),
  liquid_frac: judged(0.03, 0, 0.1, "linear"),
  iceTold_K: judged(0, -1.5, 1.5, "linear"),
  shopIceAssumed_K: judged(0, -6, 2, "linear"),
  freezerAssumed_K: judged(0, -4, 4, "linear"),
  foodTold_K: judged(0, -1, 1, "linear"),
  frozenAssumed_K: judged(0, -4, 4, "linear"),
  fridgeAssumed_K: judged(0, -2, 3, "linear"),
  ambientAssumed_K: judged(0, -4, 4, "linear"),
  foodHeat_frac: judged(1, 0.936, 1.064, "log"),
  /** Air of the whole trip where nobody told the weather: on top of the errors of a forecast. */
  weatherAssumed_K: judged(0, -6, 6, "linear"),
  cloudShift_frac: judged(0, -0.2, 0.2, "linear"),
  wind_frac: judged(1, 0.6, 1.6, "log"),
};

/**
 * How a forecast errs with lead time: standard deviation of a day's air on the first day, growth a day, the most it comes
 * to, share that each day keeps of the error of the day before; and the same of the dew point.
 *
 * @source engineering-judgement
 */
export const forecastError = {
  airFirst_K: 1.5,
  airGrowth_K_per_day: 0.35,
  airMost_K: 4.5,
  airKept_frac: 0.7,
  dewFirst_K: 2,
  dewGrowth_K_per_day: 0.35,
  dewMost_K: 4,
} as const;

/** Standard score of the 90 % point. */
const z90 = 1.2815515655446004;

const logit = (share: number): number => Math.log(share / (1 - share));

/** The scale of a closure's prior: a share within 0…1, a positive number, or any number. */
export function scaleOf(key: string, prior: Spread): Scale {
  if (prior.p10 <= 0) return "linear";
  return key.endsWith("_frac") && prior.p90 < 1 && prior.p50 < 1 ? "share" : "log";
}

/**
 * The value of a prior at a standard score: two half normal curves that meet at the median and pass through the stated 10 %
 * and 90 %, on the prior's scale.
 */
export function valueAtScore(prior: Spread & { scale: Scale }, score: number): number {
  const reach = Math.abs(score) / z90;
  const far = score < 0 ? prior.p10 : prior.p90;
  if (prior.scale === "log") return prior.p50 * Math.exp(reach * Math.log(far / prior.p50));
  if (prior.scale === "linear") return prior.p50 + (far - prior.p50) * reach;
  const middle = logit(prior.p50);
  return 1 / (1 + Math.exp(-(middle + (logit(far) - middle) * reach)));
}

const withScale = <K extends string>(
  rows: Readonly<Record<K, Spread>>,
): Record<K, Spread & { scale: Scale }> =>
  Object.fromEntries(
    Object.entries<Spread>(rows).map(([key, prior]) => [key, { ...prior, scale: scaleOf(key, prior) }]),
  ) as Record<K, Spread & { scale: Scale }>;

/** The closures of cooler and sky with their scales, ready to draw from. */
export const drawnClosures: ReturnType<typeof withScale<keyof typeof closurePriors>> =
  withScale(closurePriors);
export const drawnSky: ReturnType<typeof withScale<keyof typeof skyPriors>> = withScale(skyPriors);
