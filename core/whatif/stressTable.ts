import { placeDefaults } from "../sky/places.ts";
import type { PlaceKind, Weather } from "../sky/types.ts";
import type { Trip, TripCooler } from "../trip/types.ts";
import { nSharedPieces, type Spot, withCooler, withIce, withSpots } from "./change.ts";
import type { StressCase } from "./types.ts";

/** One thing that may go worse than planned, with nobody doing anything about it. */
export interface Stress {
  key: StressCase["key"];
  says: string;
  make(trip: Trip): Trip;
}

const hotter_K = 5;
const hottest_C = 90;
const warmBody_C = 32;
const warmFood_K = 5;
const day_s = 86_400;
const hour_s = 3600;

const hotterWeather = (told: Weather): Weather => ({
  at: (t_s, into) => {
    const out = told.at(t_s, into);
    out.air_C += hotter_K;
    return out;
  },
  dayMean_C: (t_s) => told.dayMean_C(t_s) + hotter_K,
  sunTimes: (from_s, to_s) => told.sunTimes(from_s, to_s),
});

/** Rooms whose air somebody holds: a hotter day does not reach them. */
const held: ReadonlySet<PlaceKind> = new Set(["cabin", "indoors"]);

function hotter(trip: Trip): Trip {
  const air = ({ place, air_C }: Spot): Partial<Spot> =>
    air_C === null || held.has(place) ? {} : { air_C: Math.min(hottest_C, air_C + hotter_K) };
  return { ...withSpots(trip, air), weather: hotterWeather(trip.weather) };
}

function openedTwice(trip: Trip): Trip {
  const twins = trip.events.filter((event) => event.do === "open").map(twin);
  const twice: Trip = { ...trip, events: [...trip.events, ...twins].sort((a, b) => a.t_s - b.t_s) };
  return trip.coolers.reduce<Trip>((made, { openings }, i) => {
    if (openings === null) return made;
    // As written here the lid is never asked to be open for more than all of its hours; a member may open it oftener.
    const most = (openings.to_s - openings.from_s) / openings.each_s;
    return withCooler(made, i, { openings: { ...openings, perDay: Math.min(2 * openings.perDay, most) } });
  }, twice);
}

type Opening = Extract<Trip["events"][number], { do: "open" }>;

/** The same opening once more, as soon as the lid was shut and the air inside had settled. */
const twin = (event: Opening): Opening => ({ ...event, t_s: event.t_s + event.for_s + 600 });

const unshaded = (trip: Trip): Trip =>
  withSpots(trip, ({ place }) => {
    const { isOpen, sunPass_frac, warming_K } = placeDefaults[place];
    return isOpen || sunPass_frac > 0 || warming_K > 0 ? { shade_frac: 0 } : {};
  });

const halfTheIce = (trip: Trip): Trip =>
  withIce(trip, (lot) => ({ ...lot, mass_kg: lot.mass_kg / 2, pieces: nSharedPieces(lot.pieces, 0.5) }));

/** Highest air of the first day, or of the trip where that is shorter. */
function firstHigh_C(trip: Trip): number {
  let high_C = Number.NEGATIVE_INFINITY;
  for (let t_s = 0; t_s <= Math.min(day_s, trip.duration_s); t_s += hour_s)
    high_C = Math.max(high_C, trip.weather.at(t_s).air_C);
  return high_C;
}

function startedWarm(trip: Trip): Trip {
  const warm_C = Math.max(warmBody_C, firstHigh_C(trip));
  const own_C = ({ start }: TripCooler): number => (start.kind === "uniform" ? start.body_C : start.room_C);
  return {
    ...trip,
    coolers: trip.coolers.map((cooler) => ({
      ...cooler,
      start: { kind: "uniform", body_C: Math.max(warm_C, own_C(cooler)) },
    })),
    food: trip.food.map((item) =>
      item.state === "chilled" && item.cooler !== null
        ? { ...item, start_C: item.start_C + warmFood_K }
        : item,
    ),
  };
}

/** What may go wrong, one at a time. */
export const stresses: readonly Stress[] = [
  { key: "hotter", says: "every hour is 9 °F (5 K) hotter than the forecast says", make: hotter },
  { key: "opened twice", says: "every cooler is opened twice as often", make: openedTwice },
  { key: "no shade", says: "there is no shade anywhere", make: unshaded },
  { key: "half the ice", says: "only half of all the ice is there", make: halfTheIce },
  {
    key: "started warm",
    says: "the coolers are packed at 90 °F (32 °C) or the first day's high, chilled food 9 °F (5 K) warmer",
    make: startedWarm,
  },
];
