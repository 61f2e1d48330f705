import { bodyOf } from "../cooler/builds.ts";
import type { Stay } from "../sky/types.ts";
import type { Trip, TripCooler, TripFood } from "../trip/types.ts";

/** A change to a trip that may help one cooler, and how one would say it. */
export interface WayOut {
  does: string;
  trip: Trip;
}

/**
 * Changes that apply to this cooler as the trip stands; none is known to help before it is run. They are alternatives,
 * each to the same trip.
 */
export function waysOutOf(trip: Trip, cooler: number): WayOut[] {
  const ways = [
    chillBody,
    halfOpenings,
    moreShade,
    rideInCabin,
    drinksElsewhere,
    freezeOne,
    thickerWalls,
    largerBox,
  ];
  return ways.map((way) => way(trip, cooler)).filter((way) => way !== null);
}

type Way = (trip: Trip, cooler: number) => WayOut | null;

function withCooler(trip: Trip, cooler: number, change: Partial<TripCooler>): Trip {
  return { ...trip, coolers: trip.coolers.map((one, i) => (i === cooler ? { ...one, ...change } : one)) };
}

const chillBody: Way = (trip, cooler) => {
  const { start, name } = trip.coolers[cooler]!;
  if (start.kind !== "uniform" || start.body_C <= 5) return null;
  const cold = withCooler(trip, cooler, { start: { kind: "uniform", body_C: 3 } });
  return { does: `chill the body of ${name} to 37 °F (3 °C) before packing`, trip: cold };
};

const halfOpenings: Way = (trip, cooler) => {
  const { openings, name } = trip.coolers[cooler]!;
  if (openings === null || openings.perDay < 2) return null;
  const perDay = Math.floor(openings.perDay / 2);
  const trip2 = withCooler(trip, cooler, { openings: { ...openings, perDay } });
  return { does: `open ${name} ${perDay} times a day instead of ${openings.perDay}`, trip: trip2 };
};

function withStays(trip: Trip, change: (stay: Stay) => Stay): Trip | null {
  const legs = trip.legs.map(change);
  return legs.some((leg, i) => leg !== trip.legs[i]) ? { ...trip, legs } : null;
}

const open: ReadonlySet<Stay["place"]> = new Set(["truck bed", "roof", "raft", "boat", "camp"]);
const DEEP_SHADE = 0.9;

const moreShade: Way = (trip, cooler) => {
  const shaded = withStays(trip, (leg) =>
    open.has(leg.place) && (leg.shade_frac ?? 0) < DEEP_SHADE ? { ...leg, shade_frac: DEEP_SHADE } : leg,
  );
  return (
    shaded && {
      does: `keep ${trip.coolers[cooler]!.name} in 90 % shade wherever it stands in the open`,
      trip: shaded,
    }
  );
};

const rideInCabin: Way = (trip, cooler) => {
  const hot: ReadonlySet<Stay["place"]> = new Set(["trunk", "closed car", "truck bed", "roof"]);
  const moved = withStays(trip, (leg) =>
    hot.has(leg.place) ? { ...leg, place: "cabin", shade_frac: null, ground: null, air_C: null } : leg,
  );
  return moved && { does: `let ${trip.coolers[cooler]!.name} ride in the cabin`, trip: moved };
};

const drinksElsewhere: Way = (trip, cooler) => {
  const isDrink = (food: TripFood): boolean => food.cooler === cooler && food.like.kind === "drink";
  const rest = trip.food.filter((food) => !isDrink(food));
  if (rest.length === trip.food.length || !rest.some((food) => food.cooler === cooler)) return null;
  return { does: `take the drinks out of ${trip.coolers[cooler]!.name}`, trip: { ...trip, food: rest } };
};

const freezeOne: Way = (trip, cooler) => {
  const can = trip.food.filter(
    (food) =>
      food.cooler === cooler &&
      food.putIn_s === null &&
      (food.state === "chilled" || food.state === "ambient") &&
      !food.freezesBadly &&
      food.like.kind !== "drink" &&
      food.like.freezes_C !== null,
  );
  const largest = can.reduce<TripFood | null>((a, b) => (a === null || b.mass_kg > a.mass_kg ? b : a), null);
  if (largest === null) return null;
  const start_C = trip.freezer?.at_C ?? -16;
  const food = trip.food.map((one) =>
    one === largest ? { ...one, state: "frozen" as const, start_C } : one,
  );
  return { does: `freeze ${largest.name} before it goes in`, trip: { ...trip, food } };
};

const thickerWalls: Way = (trip, cooler) => {
  const { body, volume_m3, name } = trip.coolers[cooler]!;
  if (body.sides.insulation === "vacuum panel" || body.sides.thickness_m >= 0.05) return null;
  const thick = bodyOf("thick", volume_m3, body.absorptance_frac);
  const same = { ...thick, inside: body.inside };
  return {
    does: `use a thick-walled cooler of the same room for ${name}`,
    trip: withCooler(trip, cooler, { body: same }),
  };
};

const largerBox: Way = (trip, cooler) => {
  const { body, volume_m3, name, size } = trip.coolers[cooler]!;
  const grow = 1.3;
  const { length_m, width_m, height_m } = body.inside;
  const side = Math.cbrt(grow);
  const larger: Partial<TripCooler> = {
    size,
    volume_m3: volume_m3 * grow,
    body: {
      ...body,
      inside: { length_m: length_m * side, width_m: width_m * side, height_m: height_m * side },
      emptyWeight_kg: body.emptyWeight_kg * side * side,
      measured_W_per_K: body.measured_W_per_K === null ? null : body.measured_W_per_K * side * side,
    },
  };
  const litres = Math.round(volume_m3 * grow * 1000);
  return {
    does: `use a cooler of the same kind with ${Math.round(litres / 0.946352946)} qt (${litres} L) for ${name}`,
    trip: withCooler(trip, cooler, larger),
  };
};
