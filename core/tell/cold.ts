import { extent, max, sum } from "d3-array";
import type { HeatBudget } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { iceLatent_J_per_kg } from "../matter/ice.ts";
import { formatIn, temperatureWords } from "../quantity/show.ts";
import type { UnitSystem } from "../quantity/units.ts";
import type { Trip, TripCooler } from "../trip/types.ts";
import { durationWords, printable } from "./words.ts";

const MELT_kJ_per_kg = iceLatent_J_per_kg / 1000;

/** One way by which heat came in, told as the ice it cost. */
export interface ColdPart {
  name: string;
  /** What drives it on this trip, or nothing. */
  fact: string;
  /** Negative where heat went out. */
  ice_kg: number;
}

/** Where the cold of one cooler went: parts that add up, and the sun's share that is within them. */
export interface ColdSpent {
  parts: ColdPart[];
  sunWithin_kg: number;
  dryIceGasWithin_kg: number;
  /** While there was ice: 0 in a cooler without. */
  span_days: number;
  /** The ice was gone before the return. */
  isGone: boolean;
}

type Row = readonly [keyof HeatBudget, string];
const GROUPS: readonly (readonly Row[])[] = [
  [
    ["sides", "walls"],
    ["base", "base"],
    ["lid", "lid"],
    ["seal", "lid edge and leaks"],
  ],
  [["warmItems", "food and drink"]],
  [
    ["openingAir", "air let in"],
    ["openingExposure", "open lid"],
  ],
  [["body", "cooling the cooler itself"]],
];

/**
 * The heat budget of a cooler (middle case, while it has ice) as ice at 0 °C, largest group first; walls, base, lid and its edge
 * stay together. It is the cold that was used, which is not quite the ice that melted: ice below freezing, frozen food and
 * cold water take up heat too.
 */
export function coldSpent(forecast: Forecast, index: number, units: UnitSystem): ColdSpent {
  const { heat_kJ, heatUntil_h } = forecast.result.coolers[index]!;
  const facts = driverWords(forecast, index, units);
  const groups = GROUPS.map((rows) => rows.filter(([key]) => heat_kJ[key] !== 0));
  const size = (rows: readonly Row[]): number => sum(rows, ([key]) => heat_kJ[key]);
  const parts = groups
    .sort((a, b) => size(b) - size(a))
    .flat()
    .map(([key, name]) => ({ name, fact: facts[key] ?? "", ice_kg: heat_kJ[key] / MELT_kJ_per_kg }));
  return {
    parts,
    sunWithin_kg: heat_kJ.sun / MELT_kJ_per_kg,
    dryIceGasWithin_kg: heat_kJ.dryIceGas / MELT_kJ_per_kg,
    span_days: heatUntil_h / 24,
    isGone: heatUntil_h < forecast.result.trip.hours - 1 / 60,
  };
}

function driverWords(
  forecast: Forecast,
  index: number,
  units: UnitSystem,
): Partial<Record<keyof HeatBudget, string>> {
  const cooler = forecast.trip.coolers[index]!;
  return {
    sides: outsideWords(forecast.result.coolers[index]!.series.outside_C, units),
    base: groundWords(forecast),
    lid: shadeWords(forecast, cooler),
    seal: "",
    warmItems: warmestWords(forecast, index, units),
    openingAir: "moist, each time",
    openingExposure: openingWords(cooler),
    body: bodyWords(cooler, units),
  };
}

function outsideWords(outside_C: readonly number[], units: UnitSystem): string {
  const [low, high] = extent(outside_C);
  if (low === undefined || high === undefined) return "";
  const unit = units === "us" ? "°F" : "°C";
  return `air ${formatIn(low, unit, 0).split(" ")[0]} to ${formatIn(high, unit, 0)}`;
}

function groundWords({ trip }: Forecast): string {
  const grounds = [...new Set(trip.legs.flatMap((leg) => (leg.ground === null ? [] : [leg.ground])))];
  return grounds.length === 0 ? "" : `on ${grounds.slice(0, 2).join(", ")}`;
}

function shadeWords({ trip }: Forecast, cooler: TripCooler): string {
  if (cooler.cover !== "none") return cooler.cover;
  const longest = max(trip.legs.filter((leg) => leg.shade_frac !== null).map((leg) => leg.to_s - leg.from_s));
  const leg = trip.legs.find((one) => one.shade_frac !== null && one.to_s - one.from_s === longest);
  return leg === undefined ? "" : `shade ${Math.round(leg.shade_frac! * 100)} %`;
}

function warmestWords({ trip, result }: Forecast, index: number, units: UnitSystem): string {
  if (result.coolers[index]!.heat_kJ.warmItems < 0)
    return isFrozenIn(trip, index) ? "frozen food" : "came colder than it left";
  const warm = trip.food
    .filter((food) => food.cooler === index && food.start_C > 0)
    .sort((a, b) => b.mass_kg * b.start_C - a.mass_kg * a.start_C)[0];
  return warm === undefined ? "" : `${temperatureWords(warm.start_C, units)} ${printable(warm.name)} first`;
}

/** Whether frozen food is packed or merged into a cooler. */
function isFrozenIn({ food, events }: Trip, index: number): boolean {
  const into = events.flatMap((event) => (event.do === "merge" && event.into === index ? [event.from] : []));
  return food.some(({ state, cooler }) => state === "frozen" && [index, ...into].includes(cooler ?? -1));
}

function openingWords({ openings }: TripCooler): string {
  if (openings === null) return "";
  const each =
    openings.each_s < 90 ? `${Math.round(openings.each_s)} s` : durationWords(openings.each_s / 3600);
  return `${openings.perDay} a day, ${each}`;
}

function bodyWords({ start }: TripCooler, units: UnitSystem): string {
  if (start.kind === "uniform") return `${temperatureWords(start.body_C, units)} when packed`;
  return `chilled ${durationWords(start.for_s / 3600)} before`;
}

/** Of the heat through walls and lid, the share from the sun above which shade comes first. */
const SUNNY_frac = 0.2;

/** The largest single way in and what would cut it, as advice; how many hours it is worth, a habit tried on the trip tells. */
export function largestSaving(forecast: Forecast, index: number): string | null {
  const { heat_kJ } = forecast.result.coolers[index]!;
  const { lid, sides, base, seal, openingAir, openingExposure, warmItems, body } = heat_kJ;
  const ways = { sides, lid, base, seal, openings: openingAir + openingExposure, warmItems, body };
  const [way, kJ] = (Object.entries(ways) as [keyof typeof ways, number][]).reduce((most, one) =>
    one[1] > most[1] ? one : most,
  );
  if (kJ <= 0) return null;
  const cooler = forecast.trip.coolers[index]!;
  const isSunny = heat_kJ.sun > SUNNY_frac * Math.max(lid + sides, 1);
  const shade = isSunny ? "full shade" : "shade and a less hot place";
  const cover = cooler.cover === "none" ? `${shade}, or a cover over it` : shade;
  const said: Readonly<Record<keyof typeof ways, string>> = {
    sides: `walls. What would cut it: ${cover}; then thicker walls`,
    lid: `lid. What would cut it: ${cover}${cooler.top === "none" ? "; a pad under or over the lid" : ""}`,
    base: "base. What would cut it: standing it off warm ground",
    seal: "lid edge and leaks. What would cut it: a clean gasket, latches shut, the plug tight",
    openings:
      "openings. What would cut it: fewer and shorter ones, or a cooler apart for what is wanted often",
    warmItems: "warm food and drink. What would cut it: chilling them before they are packed",
    body: "the cooler itself. What would cut it: chilling it the night before",
  };
  return `${said[way]}.`;
}
