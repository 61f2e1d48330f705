import { drainSwitch } from "../forecast/drainSwitch.ts";
import { staysOf } from "../forecast/load.ts";
import type { Band, CoolerResult, DrainSwitch } from "../forecast/result.ts";
import { iceOutCarriedOn_s } from "../forecast/run.ts";
import { valueAt } from "../forecast/series.ts";
import type { Forecast } from "../forecast/types.ts";
import { massWords } from "../quantity/show.ts";
import type { Trip, TripFood } from "../trip/types.ts";
import { insideAt } from "./mergeRules.ts";
import { dayAt, dayStart_s } from "./moment.ts";

/** Both numbers of one way with the meltwater. */
export interface DrainSide {
  /** End of the ice, hours from departure, carried on past the return. */
  iceOut_h: Band;
  /** Hours that the first food stays longer within its limit than the other way; null: none passes it either way. */
  foodGain_h: Band | null;
}

/** What to do with the meltwater of one cooler on one day. */
export interface DrainAdvice {
  cooler: string;
  day: number;
  does: "keep" | "drain";
  says: string;
  keep: DrainSide;
  open: DrainSide;
  /** Strongest first; the first one decides. */
  reasons: string[];
}

const HOUR_s = 3600;
/** Less water is a film that nobody drains. Engineering judgement. */
const LEAST_water_kg = 0.5;
/** Water that is felt when a cooler is lifted, or slops over in a boat. Engineering judgement. */
const HEAVY_water_kg = 3;
/** Gains below this decide nothing. */
const LEAST_h = 1;

const plus = (band: Band, hours: number): Band => ({
  p10: band.p10 === null ? null : band.p10 + hours,
  p50: band.p50 === null ? null : band.p50 + hours,
  p90: band.p90 === null ? null : band.p90 + hours,
});
const negative = ({ p10, p50, p90 }: Band): Band => {
  const turned = (value: number | null): number | null => (value === null ? null : -value);
  return { p10: turned(p90), p50: turned(p50), p90: turned(p10) };
};

/** Ice and food of both ways: the trip's own as its middle case has it, the other as that and the gain of the switch. */
function sidesOf(out_h: number, other: DrainSwitch): { keep: DrainSide; open: DrainSide } {
  const own: DrainSide = {
    iceOut_h: { p10: out_h, p50: out_h, p90: out_h },
    foodGain_h: other.foodGain_h === null ? null : negative(other.foodGain_h),
  };
  const would: DrainSide = { iceOut_h: plus(other.iceGain_h, out_h), foodGain_h: other.foodGain_h };
  return other.to === "open" ? { keep: own, open: would } : { keep: would, open: own };
}

/** Why, and which way it points. */
interface Reason {
  does: "keep" | "drain";
  why: string;
}

const namesOf = (food: readonly TripFood[]): string => [...new Set(food.map(({ name }) => name))].join(", ");

/** One day of one cooler. */
interface Day {
  from_s: number;
  to_s: number;
  food: readonly TripFood[];
  water_kg: number;
}

/** Raw juice first, then packages that let water in: these are about food that people eat, and no number overrules them. */
function hygieneReasons(trip: Trip, cooler: number, day: Day): Reason[] {
  const ever = trip.food.filter((food) => food.cooler === cooler && (food.putIn_s ?? 0) <= day.to_s);
  const drips = ever.filter((food) => food.raw && !food.watertight);
  const soaks = day.food.filter((food) => !food.raw && !food.watertight && food.like.kind !== "drink");
  return [
    ...(drips.length > 0
      ? [
          {
            does: "drain" as const,
            why: `juice of ${namesOf(drips)} may be in the water: let it out away from camp and water, discard what it reached that is not watertight, wash`,
          },
        ]
      : []),
    ...(soaks.length > 0
      ? [
          {
            does: "drain" as const,
            why: `packages that let water in (${namesOf(soaks)}) must not lie in it: drain, or lift them above it`,
          },
        ]
      : []),
  ];
}

const isSoaked = ({ result }: Forecast, food: TripFood, until_s: number): boolean => {
  const wet_h = result.food.find(({ name }) => name === food.name)?.wet_h?.p50 ?? null;
  return wet_h !== null && wet_h * HOUR_s <= until_s;
};

/** A cooler that is carried or rides on this day. */
function moveReasons(trip: Trip, cooler: number, day: Day): Reason[] {
  const riding = new Set(["cabin", "closed car", "trunk", "truck bed", "roof", "raft", "boat"]);
  const stays = staysOf(trip, cooler).filter((stay) => stay.from_s < day.to_s && stay.to_s > day.from_s);
  const moves =
    stays.some((stay) => stay.from_s > day.from_s) || stays.some(({ place }) => riding.has(place));
  if (!moves || day.water_kg < HEAVY_water_kg) return [];
  const weight = `${massWords(day.water_kg, "metric")}, ${massWords(day.water_kg, "us")}`;
  return [{ does: "drain", why: `it is moved that day, and the water weighs ${weight} and slops` }];
}

function coolingReasons(cooler: number, day: Day): Reason[] {
  const warm = day.food.filter((food) => {
    const in_s = food.putIn_s ?? 0;
    return food.cooler === cooler && food.start_C > 10 && in_s >= day.from_s && in_s < day.to_s;
  });
  if (warm.length === 0) return [];
  return [
    { does: "keep", why: `${namesOf(warm)} came warm: what touches ice water cools faster than in air` },
  ];
}

/** The numbers decide where nothing else does: the food's first, then the ice's. */
function numberReason({ to, iceGain_h, foodGain_h }: DrainSwitch): Reason {
  const now = to === "open" ? "keep" : "drain";
  const other = to === "open" ? "drain" : "keep";
  const gains = [
    ["food", foodGain_h?.p50 ?? 0],
    ["ice", iceGain_h.p50 ?? 0],
  ] as const;
  const telling = gains.find(([, gain_h]) => Math.abs(gain_h) >= LEAST_h);
  if (telling === undefined)
    return {
      does: "keep",
      why: "it makes less than an hour's difference either way: keeping it is less work",
    };
  const [what, gain_h] = telling;
  const does = gain_h > 0 ? other : now;
  return { does, why: `the ${what} lasts about ${Math.round(Math.abs(gain_h))} h longer so` };
}

/** Highest that the water stands in a stretch of the trip; the middle case. */
function water_kg({ series }: CoolerResult, from_s: number, to_s: number): number {
  const at = series.t_h.map((hour) => hour * HOUR_s);
  const inside = series.water_L.p50.filter((_, i) => at[i]! >= from_s && at[i]! <= to_s);
  return Math.max(valueAt(at, series.water_L.p50, from_s), ...inside);
}

function adviceFor(forecast: Forecast, cooler: number, other: DrainSwitch, out_h: number): DrainAdvice[] {
  const { trip, result } = forecast;
  const own = result.coolers[cooler]!;
  const advice: DrainAdvice[] = [];
  const last = dayAt(trip, trip.duration_s);
  for (let day = 1, from_s = 0; day <= last && from_s < trip.duration_s; day++) {
    const to_s = Math.min(trip.duration_s, dayStart_s(trip, from_s + 1) + 90_000);
    const end_s = Math.min(trip.duration_s, dayStart_s(trip, to_s));
    const until_s = end_s > from_s ? end_s : trip.duration_s;
    const food = insideAt(trip, cooler, from_s);
    const stretch: Day = { from_s, to_s: until_s, food, water_kg: water_kg(own, from_s, until_s) };
    from_s = until_s;
    if (stretch.water_kg < LEAST_water_kg) continue;
    const soaked = food.filter((item) => item.raw || isSoaked(forecast, item, until_s));
    const reasons = [
      ...hygieneReasons(trip, cooler, { ...stretch, food: soaked }),
      ...moveReasons(trip, cooler, stretch),
      ...coolingReasons(cooler, stretch),
      numberReason(other),
    ];
    const { does, why } = reasons[0]!;
    const says = `${own.name}, day ${day}: ${does === "keep" ? "keep the water" : "drain"}, ${why}`;
    advice.push({
      cooler: own.name,
      day,
      does,
      says,
      ...sidesOf(out_h, other),
      reasons: reasons.map((one) => one.why),
    });
  }
  return advice;
}

/**
 * Keep the meltwater or let it out, per cooler and day with water to speak of: both numbers, and reasons that come before
 * them. In order: raw juice in the water; packages that let water in and lie in it; weight and slosh where the cooler is
 * moved; something warm that ice water cools faster; the hours of food, then of ice.
 *
 * @param forecast with its run, or with `drainSwitch` filled in
 * @source common-practice, engineering-judgement
 */
export function drainAdvice(trip: Trip, forecast: Forecast): DrainAdvice[] {
  const { fleet, result } = forecast;
  return trip.coolers.flatMap((_, i) => {
    const cooler = result.coolers[i]!;
    const other = cooler.drainSwitch ?? (fleet === undefined ? null : drainSwitch(trip, fleet, i));
    if (other === null) return [];
    const end_h = trip.duration_s / HOUR_s;
    const out_h = fleet === undefined ? (cooler.iceOut_h.p50 ?? end_h) : iceOutCarriedOn_s(fleet, i) / HOUR_s;
    return adviceFor(forecast, i, other, out_h);
  });
}

/** The share of ice by volume, frozen food counted, beside what is told at the ramp (common practice): an output, no rule. */
export function ratioWords({ name, iceToLoad_ratio }: CoolerResult): string {
  if (iceToLoad_ratio === null) return `${name} holds nothing but ice and frozen food at departure`;
  const beside = "common practice says two to one, and some say one to one";
  return `${name}: ice and frozen food to the rest ${iceToLoad_ratio.toFixed(1)} to 1 by volume; ${beside}`;
}
