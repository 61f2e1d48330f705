import type { Band, BandSeries } from "../../forecast/result.ts";
import type { Forecast, Mark } from "../../forecast/types.ts";
import { drainAdvice } from "../../plan/drainLine.ts";
import { localInstant_ms } from "../../sky/localTime.ts";
import type { Trip } from "../../trip/types.ts";
import { hasIce } from "../coolerSentence.ts";
import { voiceFor } from "../voice.ts";
import { clockOf, clockWords, dayStart_h, localTime, type TripClock } from "../words.ts";

/** One cooler of the strip. */
export interface StripRow {
  cooler: string;
  /** What it is called in short: its number, and how large it is. */
  number: string;
  size: string;
  t_h: readonly number[];
  ice_kg: BandSeries;
  hasIce: boolean;
  iceOut_h: Band;
  /** Its lid stays taped until then; null: it is not sealed. */
  sealed_h: number | null;
  /** Emptied into another one; null: it stays to the return. */
  emptied: { t_h: number; into: string } | null;
  /** Merges, ice, what is put in, moves of its own, covers, drains of the file. */
  marks: readonly Mark[];
  /** What the dinners take out of it. */
  dinners: readonly { t_h: number; words: string }[];
  /** A moment on each day on which its meltwater is better let out. */
  drains_h: readonly number[];
}

/** The whole trip as `coolerStrip` draws it. */
export interface CoolerStripData {
  clock: TripClock;
  middle: boolean;
  nights_h: readonly (readonly [number, number])[];
  /** Where everything stands, from when. */
  places: readonly { from_h: number; place: string }[];
  rows: readonly StripRow[];
}

const HOUR_s = 3600;
const SAME_h = 1 / 60;
/** An ice run brings the ice that goes in so long after it at most. */
const LONGEST_WAY_h = 12;

/** What `coolerStrip` draws of a forecast; with a plan, ice runs tell when to leave. */
export function coolerStripData(forecast: Forecast): CoolerStripData {
  const { trip, result } = forecast;
  const drains = drainAdvice(trip, forecast).filter(({ does }) => does === "drain");
  const clock = clockOf(trip);
  return {
    clock,
    middle: voiceFor(forecast, { units: "us" }).middle,
    nights_h: forecast.nights_h,
    places: trip.legs.map(({ from_s, place }) => ({ from_h: from_s / HOUR_s, place })),
    rows: result.coolers.map((cooler, i): StripRow => {
      const { number, size, sealedUntil_s } = trip.coolers[i]!;
      const merge = trip.events.find((event) => event.do === "merge" && event.from === i);
      return {
        cooler: cooler.name,
        number: String(number ?? i + 1),
        size,
        t_h: cooler.series.t_h,
        ice_kg: cooler.series.ice_kg,
        hasIce: hasIce(forecast, i),
        iceOut_h: cooler.iceOut_h,
        sealed_h: sealedUntil_s === null ? null : sealedUntil_s / HOUR_s,
        emptied:
          merge?.do === "merge" ? { t_h: merge.t_s / HOUR_s, into: result.coolers[merge.into]!.name } : null,
        marks: marksOf(forecast, i),
        dinners: dinnersOf(trip, i),
        drains_h: drains.filter((one) => one.cooler === cooler.name).map(({ day }) => middayOf_h(day, clock)),
      };
    }),
  };
}

/** Acts that are told in words above the lane; legs are told once for all, meals below, openings not at all. */
function marksOf({ trip, result, marks }: Forecast, cooler: number): Mark[] {
  const { name } = result.coolers[cooler]!;
  const legs = new Set(trip.legs.map(({ from_s }) => from_s / HOUR_s));
  return marks.flatMap((mark) => {
    if (mark.cooler !== name || mark.what === "open" || mark.what === "take out") return [];
    if (mark.what === "move" && legs.has(mark.t_h)) return [];
    if (mark.what !== "add ice") return [mark];
    const t_h = (iso: string): number =>
      (localInstant_ms(iso, trip.place.timezone) - clockOf(trip).depart_ms) / 3_600_000;
    // What is fetched is put in when the runner is back.
    const run = result.plan?.iceRuns.findLast(
      ({ at, into }) => into === name && t_h(at) <= mark.t_h + SAME_h && t_h(at) > mark.t_h - LONGEST_WAY_h,
    );
    if (run === undefined || run.leaveBy >= run.at) return [mark];
    const clock = clockWords(localTime(t_h(run.leaveBy), clockOf(trip)).sinceMidnight_min);
    return [{ ...mark, words: `${mark.words}, leave ${clock}` }];
  });
}

/** Dinners, by the cooler that their food lies in by then: a merge takes it along. */
function dinnersOf(trip: Trip, cooler: number): StripRow["dinners"] {
  const clock = clockOf(trip);
  const dinner_min = Math.round(trip.meals.dinner_s / 60);
  const isDinner = (t_s: number): boolean => localTime(t_s / HOUR_s, clock).sinceMidnight_min === dinner_min;
  const taken = new Map<number, string[]>();
  for (const food of trip.food) {
    const meals = food.parts_s !== null && food.parts_s.length > 0 ? food.parts_s : [food.eat_s];
    for (const t_s of meals) {
      if (t_s === null || food.cooler === null || !isDinner(t_s)) continue;
      if (lyingIn(trip, food.cooler, t_s) === cooler) taken.set(t_s, [...(taken.get(t_s) ?? []), food.name]);
    }
  }
  return [...taken]
    .sort(([a], [b]) => a - b)
    .map(([t_s, [first, ...rest]]) => ({
      t_h: t_s / HOUR_s,
      words: `${first}${rest.length === 0 ? "" : ` +${rest.length}`}`,
    }));
}

function lyingIn(trip: Trip, cooler: number, t_s: number): number {
  return trip.events.reduce(
    (at, event) => (event.do === "merge" && event.from === at && event.t_s <= t_s ? event.into : at),
    cooler,
  );
}

/** The middle of what the trip has of a day. */
function middayOf_h(day: number, clock: TripClock): number {
  const from_h = Math.max(0, dayStart_h(day, clock));
  return (from_h + Math.min(clock.length_h, dayStart_h(day + 1, clock))) / 2;
}
