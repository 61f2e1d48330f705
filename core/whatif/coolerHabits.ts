import type { CoolerBody } from "../cooler/types.ts";
import { solarAbsorptances } from "../matter/shells.ts";
import type { Trip, TripCooler } from "../trip/types.ts";
import { withCooler } from "./change.ts";
import { packed_frac } from "./filled.ts";
import { coolerHabit, type Habit, type Way } from "./habit.ts";

const everyCooler = "the trip has no cooler";

/* What stands below as a figure of a good or bad way is judgement of what people do, not a law. */
const chilled_C = 10;
const warm_C = 20;
const garage_C = 27;
const night_s = 12 * 3600;
const nightIce_kg_per_m3 = 80;

/** A body from a warm garage or car: not colder than the air at departure, nor than the room it was chilled in. */
export function warmBody(trip: Trip, cooler: number): Trip {
  const { start } = trip.coolers[cooler];
  const room_C = start.kind === "prechill" ? start.room_C : start.body_C;
  const body_C = Math.max(garage_C, trip.weather.at(0).air_C, room_C);
  return withCooler(trip, cooler, { start: { kind: "uniform", body_C } });
}

/** A body that stood overnight with a bag of ice, in the room it was in. */
export function chilledBody(trip: Trip, cooler: number): Trip {
  const { start, volume_m3 } = trip.coolers[cooler];
  if (start.kind === "prechill") return trip;
  const room_C = start.body_C > 15 ? start.body_C : 22;
  const ice_kg = nightIce_kg_per_m3 * volume_m3;
  return withCooler(trip, cooler, { start: { kind: "prechill", for_s: night_s, ice_kg, room_C } });
}

function bodyWay({ start }: TripCooler): Way {
  if (start.kind === "prechill" || start.body_C <= chilled_C) return "good";
  return start.body_C >= warm_C ? "bad" : "between";
}

const prechill = coolerHabit({
  key: "pre-chill",
  says: "chill the cooler overnight with a bag of ice before packing",
  goodWords: "chilled overnight with ice",
  badWords: "packed warm, as from a garage or car",
  inAll: "both",
  why: everyCooler,
  wayOf: (trip, i) => bodyWay(trip.coolers[i]),
  set: (trip, i, good) => (good ? chilledBody : warmBody)(trip, i),
});

const lightUpTo_frac = 0.33;
const darkFrom_frac = 0.7;

const colour = coolerHabit({
  key: "colour",
  says: "use a white cooler, or whiten a dark lid",
  goodWords: "white outside",
  badWords: "dark outside",
  inAll: "both",
  why: everyCooler,
  wayOf: (trip, i) => {
    const { absorptance_frac } = trip.coolers[i].body;
    return absorptance_frac <= lightUpTo_frac
      ? "good"
      : absorptance_frac >= darkFrom_frac
        ? "bad"
        : "between";
  },
  set: (trip, i, good) => {
    const absorptance_frac = solarAbsorptances[good ? "white" : "dark"].p50;
    return withCooler(trip, i, { body: { ...trip.coolers[i].body, absorptance_frac } });
  },
});

/** The same walls and shape around another room; weight and a measured conductance go with the surface. */
function resized(cooler: TripCooler, room_ratio: number): Partial<TripCooler> {
  const side = Math.cbrt(room_ratio);
  const { inside, emptyWeight_kg, measured_W_per_K } = cooler.body;
  const body: CoolerBody = {
    ...cooler.body,
    inside: {
      length_m: inside.length_m * side,
      width_m: inside.width_m * side,
      height_m: inside.height_m * side,
    },
    emptyWeight_kg: emptyWeight_kg * side ** 2,
    measured_W_per_K: measured_W_per_K === null ? null : measured_W_per_K * side ** 2,
  };
  return { volume_m3: cooler.volume_m3 * room_ratio, body };
}

const full_frac = 0.9;

const headspace = coolerHabit({
  key: "headspace",
  says: "take a cooler that the load fills",
  goodWords: "the same load in a box with half the empty room",
  badWords: "the box as it is",
  inAll: "no",
  why: "every cooler is full, or has nothing in it",
  wayOf: (trip, i) => {
    const packed = packed_frac(trip, i);
    return packed > 0 && packed < full_frac ? "bad" : null;
  },
  set: (trip, i) => withCooler(trip, i, resized(trip.coolers[i], 1 - (1 - packed_frac(trip, i)) / 2)),
});

/** Habits of the coolers themselves. */
export const coolerHabits: readonly Habit[] = [prechill, colour, headspace];
