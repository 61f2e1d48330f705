import { placeDefaults } from "../sky/places.ts";
import type { PlaceKind } from "../sky/types.ts";
import type { Trip } from "../trip/types.ts";
import { type Spot, shadeAt_frac, spotsOf, withSpots } from "./change.ts";
import { type Habit, thingHabit, type Way } from "./habit.ts";

/* What stands below as a figure of a good or bad way is judgement of what people do, not a law. */
const goodShade_frac = 0.8;

const inTheOpen = (spot: Spot): boolean => placeDefaults[spot.place].isOpen;
const everyCooler = (_: Spot, trip: Trip): string[] => trip.coolers.map(({ name }) => name);

const shadeWay = (spot: Spot): Way => {
  const shade_frac = shadeAt_frac(spot);
  return shade_frac >= goodShade_frac - 0.05 ? "good" : shade_frac <= 0.05 ? "bad" : "between";
};

/** Shade at least this deep wherever a cooler stands in the open. */
const shadedBy = (trip: Trip, least_frac: number): Trip =>
  withSpots(trip, (spot) =>
    inTheOpen(spot) ? { shade_frac: Math.max(shadeAt_frac(spot), least_frac) } : {},
  );

const shade = thingHabit<Spot>({
  key: "shade",
  says: "keep it in the shade wherever it stands in the open",
  goodWords: "80 % shade in the open",
  badWords: "no shade in the open",
  inAll: "both",
  why: "it never stands in the open",
  things: (trip) => spotsOf(trip).filter(inTheOpen),
  wayOf: shadeWay,
  coolersOf: everyCooler,
  set: (trip, good) =>
    good
      ? shadedBy(trip, goodShade_frac)
      : withSpots(trip, (spot) => (inTheOpen(spot) ? { shade_frac: 0 } : {})),
});

const atCamp = (spot: Spot): boolean => spot.place === "camp" || spot.place === "tent";

/** A tent brings its own cloth and no other shade; a camp without a tent has what the file says of it. */
const tent = thingHabit<Spot>({
  key: "tent",
  says: "leave it outside in deep shade (80 %), not in a tent",
  goodWords: "outside at camp",
  badWords: "in a closed tent in the sun",
  badNow: "in a tent",
  inAll: "good",
  why: "it never stands at a camp",
  things: (trip) => spotsOf(trip).filter(atCamp),
  wayOf: (spot) => (spot.place === "camp" ? "good" : "bad"),
  coolersOf: everyCooler,
  set: (trip, good) =>
    withSpots(trip, (spot) => {
      if (!atCamp(spot) || (spot.place === "camp") === good) return {};
      return good
        ? { place: "camp", shade_frac: goodShade_frac, air_C: null }
        : { place: "tent", shade_frac: null, air_C: null };
    }),
});

const hotRides: ReadonlySet<PlaceKind> = new Set(["trunk", "closed car", "truck bed", "roof"]);
const rides = (spot: Spot): boolean => hotRides.has(spot.place) || spot.place === "cabin";

const ride = thingHabit<Spot>({
  key: "ride in the cabin",
  says: "let it ride in the cooled cabin",
  goodWords: "in a cabin with climate control",
  badWords: "in the trunk",
  badNow: "where the sun heats the air: trunk, truck bed, roof or parked car",
  inAll: "both",
  why: "it never rides in a car or truck",
  things: (trip) => spotsOf(trip).filter(rides),
  wayOf: (spot) => (spot.place === "cabin" ? "good" : "bad"),
  coolersOf: everyCooler,
  set: (trip, good) =>
    withSpots(trip, (spot) => {
      if (!rides(spot) || (spot.place === "cabin") === good) return {};
      return { place: good ? "cabin" : "trunk", shade_frac: null, ground: null, air_C: null };
    }),
});

/** Habits of where coolers stand. */
export const placeHabits: readonly Habit[] = [shade, tent, ride];
