import type { BandSeries, FoodResult, Result } from "../../../core/forecast/result.ts";
import type { Forecast } from "../../../core/forecast/types.ts";
import type { Food } from "../../../core/matter/food.ts";
import { findFood } from "../../../core/matter/foods.ts";
import type { Trip, TripCooler, TripFood, TripIce, TripSupply } from "../../../core/trip/types.ts";

const wall = { thickness_m: 0.03, insulation: "polyurethane" } as const;

function known(name: string): Food {
  const found = findFood(name);
  if (!("food" in found)) throw new Error(name);
  return found.food;
}

/** Perishable, ready to eat, may be frozen. */
const stew: Food = known("chili");

export function toyCooler(name: string, more: Partial<TripCooler> = {}): TripCooler {
  return {
    name,
    number: null,
    size: "50 L",
    volume_m3: 0.05,
    measured_frac: null,
    history: null,
    start: { kind: "uniform", body_C: 25 },
    holds: "food",
    sealedUntil_s: null,
    openings: { perDay: 10, each_s: 20, from_s: 25_200, to_s: 75_600 },
    drain: "keep",
    cover: "none",
    top: "none",
    body: {
      inside: { length_m: 0.5, width_m: 0.3, height_m: 0.33 },
      lid: wall,
      sides: wall,
      base: wall,
      emptyWeight_kg: 5,
      seal_W_per_mK: 0.03,
      leak_per_h: 0.5,
      absorptance_frac: 0.3,
      measured_W_per_K: null,
    },
    ...more,
  };
}

export function toyFood(name: string, cooler: number | null, more: Partial<TripFood> = {}): TripFood {
  return {
    id: name,
    path: name,
    name,
    amount: "1 kg",
    raw: false,
    state: "chilled",
    start_C: 4,
    mass_kg: 1,
    pieces: 1,
    thick_m: 0.03,
    shape: "slab",
    freezesBadly: false,
    watertight: true,
    eat_s: null,
    cooler,
    layer: null,
    warmBefore_s: 0,
    putIn_s: null,
    open: { place: false, state: false },
    parts_s: null,
    portion: null,
    contains: null,
    price: null,
    reducedOxygen: false,
    refrozen: false,
    daysCold: null,
    like: stew,
    ...more,
  };
}

export function toyIce(form: TripIce["form"], pieces: number, each_kg: number, cooler = 0): TripIce {
  return {
    id: `ice ${form} ${cooler}`,
    path: "ice[0]",
    form,
    mass_kg: pieces * each_kg,
    pieces,
    each: `${each_kg} kg`,
    start_C: -2,
    liquid_frac: 0,
    cooler,
    layer: null,
    price: null,
    putIn_s: null,
    boughtBefore_s: 0,
  };
}

export function toySupply(
  form: TripIce["form"],
  each_kg: number,
  more: Partial<TripSupply> = {},
): TripSupply {
  return {
    path: "supply[0]",
    form,
    each: `${each_kg} kg`,
    each_kg,
    at_C: -2,
    liquid_frac: 0,
    price: 2,
    where: "town",
    when_s: null,
    open: null,
    closed: [],
    max: null,
    chance_frac: null,
    away_s: null,
    ...more,
  };
}

export function toyTrip(more: Partial<Trip>): Trip {
  return {
    title: "toy",
    depart: "2027-06-18T06:00",
    return: "2027-06-20T06:00",
    duration_s: 48 * 3600,
    departClock_s: 21_600,
    place: { latitude_deg: 40, longitude_deg: -100, elevation_m: 0, timezone: "UTC" },
    party: {
      adults: 2,
      children: 0,
      vulnerable: false,
      diets: {},
      appetite_frac: 1,
      allergies: [],
      crew: [],
    },
    limit: { profile: "consumer", limit_C: 40 / 9 },
    confidence_frac: 0.9,
    meals: { breakfast_s: 25_200, lunch_s: 45_000, dinner_s: 66_600 },
    weather: {
      at: (_, out) =>
        Object.assign(out ?? {}, {
          air_C: 25,
          dewPoint_C: 10,
          wind_m_per_s: 1,
          cloud_frac: 0,
          global_W_per_m2: 0,
          diffuse_W_per_m2: 0,
          sunHeight_deg: 0,
          pressure_Pa: 101_325,
        }),
      dayMean_C: () => 25,
      sunTimes: () => ({ rise_s: [], set_s: [] }),
    },
    legs: [
      {
        place: "camp",
        from_s: 0,
        to_s: 48 * 3600,
        shade_frac: null,
        ground: null,
        air_C: null,
        water_C: null,
      },
    ],
    coolers: [toyCooler("galley")],
    food: [],
    ice: [],
    supply: [],
    freezer: null,
    warmLoad: null,
    rules: null,
    carry: { people: 2 },
    events: [],
    assumed: [],
    typed: {},
    ...more,
  };
}

/** Kilograms that melt in an hour in a toy cooler. */
export const MELT_kg_per_h = 0.2;

/**
 * A stand-in for the reckoning that one can do on paper: every cooler melts 0.2 kg of ice an hour (half with its lid
 * opened fewer than eight times a day), a merge brings along what is left, and food is cold while there is ice and at
 * least 3 kg of it were loose at the start. Each kilogram of ice takes a litre, loose ice two.
 */
export function toyForecast(trip: Trip): Forecast {
  const hours = trip.duration_s / 3600;
  const loose = (ice: TripIce): boolean => ice.form === "cube" || ice.form === "crushed";
  const iceIn = (i: number): TripIce[] => trip.ice.filter((ice) => ice.cooler === i);
  const sum = (ice: readonly TripIce[]): number => ice.reduce((total, { mass_kg }) => total + mass_kg, 0);
  const outs = trip.coolers.map(({ openings }, i) => {
    const rate = (openings?.perDay ?? 0) < 8 ? MELT_kg_per_h / 2 : MELT_kg_per_h;
    let end_h = sum(iceIn(i)) / rate;
    for (const event of trip.events) {
      if (event.do !== "merge") continue;
      const at_h = event.t_s / 3600;
      if (event.into === i) end_h += Math.max(0, sum(iceIn(event.from)) - at_h * MELT_kg_per_h) / rate;
      if (event.from === i && end_h >= at_h) end_h = Math.max(end_h, at_h);
    }
    return end_h;
  });
  const band = (value: number | null): { p10: number | null; p50: number | null; p90: number | null } => ({
    p10: value,
    p50: value,
    p90: value,
  });
  const path = (from: number, to: number): BandSeries => ({
    p10: [from, to],
    p50: [from, to],
    p90: [from, to],
  });
  const coldUntil = (i: number): number =>
    sum(iceIn(i).filter(loose)) < 3 && sum(iceIn(i)) > 0 ? 1 : outs[i]!;
  const food = trip.food.map((item): FoodResult => {
    const merge = trip.events.find((event) => event.do === "merge" && event.from === item.cooler);
    const at_h = merge === undefined ? Number.POSITIVE_INFINITY : merge.t_s / 3600;
    const own_h = item.cooler === null ? 0 : coldUntil(item.cooler);
    const cold_h = own_h >= at_h && merge?.do === "merge" ? Math.max(at_h, coldUntil(merge.into)) : own_h;
    const eaten_h = (item.eat_s ?? trip.duration_s) / 3600;
    const over = item.like.perishable && cold_h < eaten_h ? cold_h : null;
    return {
      name: item.name,
      cooler: item.cooler === null ? "dry box" : trip.coolers[item.cooler]!.name,
      perishable: item.like.perishable,
      eaten_h: item.eat_s === null ? null : eaten_h,
      coreMax_C: band(over === null ? 3 : 20),
      coreMin_C: band(0),
      belowLimit_h: band(0),
      overLimit_h: band(over),
      warm_h: band(over === null ? 0 : eaten_h - over),
      warmAllowed_h: 2,
      thawed_h: band(null),
      wet_h: null,
      verdict: over === null ? "keep" : "discard",
      rule: "",
      why: "",
    };
  });
  const coolers = trip.coolers.map((cooler, i) => ({
    name: cooler.name,
    volume_L: cooler.volume_m3 * 1000,
    conductance_W_per_K: 1,
    body_kJ_per_K: 5,
    packedWeight_kg: 5,
    filled_frac:
      (iceIn(i).reduce((total, ice) => total + ice.mass_kg * (loose(ice) ? 2 : 1), 0) +
        trip.food.filter((item) => item.cooler === i).reduce((total, { mass_kg }) => total + mass_kg, 0)) /
      (cooler.volume_m3 * 1000),
    frozenFoodAsIce_kg: 0,
    iceToLoad_ratio: 1,
    iceOut_h: band(outs[i]! >= hours ? null : outs[i]!),
    overLimit_h: band(null),
    series: {
      t_h: [0, hours],
      outside_C: [25, 25],
      air_C: path(2, 4),
      ice_kg: path(sum(iceIn(i)), 0),
      dryIce_kg: path(0, 0),
      waterline_m: [0, 0],
      water_L: path(0, sum(iceIn(i))),
      warmestPerishable_C: path(3, 3),
    },
    heat_kJ: {
      lid: 0,
      sides: 0,
      base: 0,
      seal: 0,
      openingAir: 0,
      openingExposure: 0,
      warmItems: 0,
      body: 0,
      sun: 0,
      dryIceGas: 0,
    },
    iceGaps_h: [],
    heatUntil_h: hours,
    coldStore_kJ: 0,
    drainSwitch: null,
    iceMelted_kg: 0,
    drained_L: 0,
    condensed_g: 0,
    balance: { energy_rel: 0, water_g: 0 },
  }));
  const result: Result = {
    coldstow: 1,
    command: "forecast",
    trip: { title: trip.title, depart: trip.depart, return: trip.return, hours },
    limit: { profile: "consumer", limit_C: 40 / 9 },
    assumed: [],
    food,
    coolers,
    warnings: [],
  };
  return { trip, result, nights_h: [], marks: [] };
}
