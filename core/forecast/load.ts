import { medianClosures } from "../cooler/closures.ts";
import type {
  Act,
  Around,
  CoolerInput,
  FleetInput,
  FoodLot,
  IceLot,
  OpeningHabit,
  OpeningSpans,
} from "../cooler/types.ts";
import { buildWalls } from "../cooler/walls.ts";
import { foodCurve, foodDensity_kg_per_m3, foodSpread_W_per_mK } from "../matter/foodProperties.ts";
import { dryIceLeft_kg } from "../safety/dryIce.ts";
import { clockMoments_s, localInstant_ms } from "../sky/localTime.ts";
import { weatherBreaks_s } from "../sky/surroundings.ts";
import type { Stay } from "../sky/types.ts";
import type { Trip, TripEvent, TripFood, TripIce } from "../trip/types.ts";
import { aroundIn } from "./inWorld.ts";

const day_s = 86_400;
const hour_s = 3600;
/** Raw food lies under everything that is eaten as it is. */
const rawDepth = 1e5;

function foodLot(item: TripFood, trip: Trip): FoodLot {
  return {
    kind: "food",
    id: item.id,
    mass_kg: item.mass_kg,
    pieces: item.pieces,
    start_C: item.start_C,
    curve: foodCurve(item.like),
    density_kg_per_m3: foodDensity_kg_per_m3(item.like, 5),
    k_W_per_mK: foodSpread_W_per_mK(item.like, 5),
    kFrozen_W_per_mK: foodSpread_W_per_mK(item.like, -15),
    thick_m: item.thick_m,
    shape: item.shape,
    layer: item.layer,
    depth: meanEating_s(item, trip) / hour_s + (item.raw ? rawDepth : 0),
  };
}

/** Least dry ice that is worth a lot of its own. */
const gone_kg = 1e-3;

/**
 * What is left at departure of dry ice that waited in its cooler since it was bought, in the day's mean air. Lots in one
 * cooler share what the cooler lets in, by their mass.
 */
function aboard_kg(ice: TripIce, trip: Trip): number {
  const { mass_kg, boughtBefore_s } = ice;
  if (ice.form !== "dry ice" || ice.putIn_s !== null || boughtBefore_s === 0) return mass_kg;
  const same = trip.ice.filter((o) => o.form === "dry ice" && o.putIn_s === null && o.cooler === ice.cooler);
  const share = mass_kg / same.reduce((sum, other) => sum + other.mass_kg, 0);
  const { conductance_W_per_K } = buildWalls(trip.coolers[ice.cooler].body, medianClosures);
  const left_kg = dryIceLeft_kg(
    mass_kg,
    share * conductance_W_per_K,
    trip.weather.dayMean_C(0),
    boughtBefore_s,
  );
  return Math.max(gone_kg, left_kg);
}

const iceLot = (ice: TripIce, trip: Trip): IceLot => ({
  kind: "ice",
  id: ice.id,
  form: ice.form,
  mass_kg: aboard_kg(ice, trip),
  pieces: ice.pieces,
  start_C: ice.start_C,
  liquid_frac: ice.liquid_frac,
  layer: ice.layer,
});

/** Moments of the trip at which local clocks show a time of day. */
function atClock_s(trip: Trip, clock_s: number, from_s = 0): number[] {
  const start_ms = localInstant_ms(trip.depart, trip.place.timezone);
  return clockMoments_s(start_ms, trip.place.timezone, clock_s, from_s, trip.duration_s);
}

/** Moments of every meal of the trip after departure and before return. */
function mealTimes_s(trip: Trip): number[] {
  const { breakfast_s, lunch_s, dinner_s } = trip.meals;
  const all = [breakfast_s, lunch_s, dinner_s].flatMap((clock_s) => atClock_s(trip, clock_s));
  return all.filter((t) => t > 0 && t < trip.duration_s).sort((a, b) => a - b);
}

/** The hours in which a cooler is opened, as stretches of the trip. */
function openingSpans(trip: Trip, habit: OpeningHabit | null): OpeningSpans | null {
  if (habit === null || habit.perDay <= 0) return null;
  const starts = atClock_s(trip, habit.from_s, -2 * day_s);
  const length_s = habit.to_s - habit.from_s;
  const spans_s = starts.map((from_s): [number, number] => [from_s, from_s + length_s]);
  return { perDay: habit.perDay, each_s: habit.each_s, spans_s: spans_s.filter(([, to_s]) => to_s > 0) };
}

/** Where one cooler stays: the legs, with its own moves laid over them. */
export function staysOf(trip: Trip, cooler: number): Stay[] {
  let stays: Stay[] = trip.legs.map((leg) => ({ ...leg }));
  for (const event of trip.events) {
    if (event.do !== "move" || event.cooler !== cooler) continue;
    const { t_s, until_s, place, shade_frac, ground, air_C, water_C, airChanges_per_h } = event;
    const before = stays.filter((s) => s.from_s < t_s).map((s) => ({ ...s, to_s: Math.min(s.to_s, t_s) }));
    const after = stays
      .filter((s) => s.to_s > until_s)
      .map((s) => ({ ...s, from_s: Math.max(s.from_s, until_s) }));
    stays = [
      ...before,
      { place, from_s: t_s, to_s: until_s, shade_frac, ground, air_C, water_C, airChanges_per_h },
      ...after,
    ];
  }
  return stays;
}

function aroundOf(trip: Trip, cooler: number): Around {
  const stays = staysOf(trip, cooler);
  return aroundIn(
    trip.weather,
    stays,
    stays.flatMap((stay) => weatherBreaks_s(trip.weather, stay)),
  );
}

/** When equal parts of an item are eaten: at once, at its own meals, or at every meal from when it is there. */
function eatingTimes_s({ eat_s, parts_s, putIn_s }: TripFood, meals: readonly number[]): readonly number[] {
  if (parts_s !== null) return parts_s;
  return eat_s !== null ? [eat_s] : meals.filter((t_s) => t_s > (putIn_s ?? 0));
}

/** The middle of the time in which it is eaten: what is eaten first lies on top. */
function meanEating_s({ eat_s, parts_s }: TripFood, trip: Trip): number {
  if (parts_s === null) return eat_s ?? trip.duration_s / 2;
  return parts_s.reduce((sum, t_s) => sum + t_s, 0) / parts_s.length;
}

function eatingActs(trip: Trip): Act[] {
  const meals = mealTimes_s(trip);
  const acts: Act[] = [];
  for (const item of trip.food) {
    if (item.cooler === null) continue;
    const moments = eatingTimes_s(item, meals);
    moments.forEach((t_s, i) => {
      acts.push({ do: "take out", t_s, lot: item.id, share_frac: 1 / (moments.length - i) });
    });
  }
  return acts;
}

function puttingActs(trip: Trip): Act[] {
  const acts: Act[] = [];
  for (const item of trip.food)
    if (item.putIn_s !== null && item.cooler !== null)
      acts.push({ do: "put in", t_s: item.putIn_s, cooler: item.cooler, lot: foodLot(item, trip) });
  for (const ice of trip.ice)
    if (ice.putIn_s !== null)
      acts.push({ do: "put in", t_s: ice.putIn_s, cooler: ice.cooler, lot: iceLot(ice, trip) });
  return acts;
}

function eventAct(event: TripEvent): Act | null {
  if (event.do === "merge") return { do: "merge", t_s: event.t_s, from: event.from, into: event.into };
  if (event.do === "drain") return { do: "drain", t_s: event.t_s, cooler: event.cooler };
  if (event.do === "open") return { do: "open", t_s: event.t_s, cooler: event.cooler, for_s: event.for_s };
  if (event.do === "cover") return { do: "cover", t_s: event.t_s, cooler: event.cooler, cover: event.cover };
  if (event.do === "wet cloth") return { do: "wet cloth", t_s: event.t_s, cooler: event.cooler };
  if (event.do === "take out")
    return { do: "take out", t_s: event.t_s, lot: event.item, share_frac: event.share_frac };
  return null;
}

/** Draining once a day is done with the breakfast; a wet cloth that nobody speaks of is wetted at every meal. */
function habitActs(trip: Trip): Act[] {
  const acts: Act[] = [];
  const meals = mealTimes_s(trip);
  trip.coolers.forEach((cooler, index) => {
    if (cooler.drain === "daily")
      for (const t_s of atClock_s(trip, trip.meals.breakfast_s))
        if (t_s > 0) acts.push({ do: "drain", t_s, cooler: index });
    const told = trip.events.some((event) => event.do === "wet cloth" && event.cooler === index);
    const wet =
      cooler.cover === "wet cloth" ||
      trip.events.some((e) => e.do === "cover" && e.cooler === index && e.cover === "wet cloth");
    if (wet && !told) for (const t_s of meals) acts.push({ do: "wet cloth", t_s, cooler: index });
  });
  return acts;
}

/**
 * Turns a trip into what the coolers are simulated with. What is in the dry box is left out: nothing keeps it cold.
 * Acts at one moment happen in the order: food out, food and ice in, the rest.
 */
export function loadTrip(trip: Trip): FleetInput {
  const inCooler = new Set(trip.food.filter(({ cooler }) => cooler !== null).map(({ id }) => id));
  const events = trip.events
    .filter((event) => event.do !== "take out" || inCooler.has(event.item))
    .map(eventAct)
    .filter((act): act is Act => act !== null);
  const acts = [...eatingActs(trip), ...puttingActs(trip), ...events, ...habitActs(trip)];
  const coolers = trip.coolers.map(
    (cooler, index): CoolerInput => ({
      name: cooler.name,
      body: cooler.body,
      start: cooler.start,
      cover: cooler.cover,
      top: cooler.top,
      drain: cooler.drain,
      openings: openingSpans(trip, cooler.openings),
      sealedUntil_s: cooler.sealedUntil_s,
      around: aroundOf(trip, index),
      lots: [
        ...trip.ice
          .filter((ice) => ice.cooler === index && ice.putIn_s === null)
          .map((ice) => iceLot(ice, trip)),
        ...trip.food
          .filter((item) => item.cooler === index && item.putIn_s === null)
          .map((item) => foodLot(item, trip)),
      ],
    }),
  );
  return {
    end_s: trip.duration_s,
    coolers,
    acts: acts.sort((a, b) => a.t_s - b.t_s),
  };
}
