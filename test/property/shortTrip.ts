import fc from "fast-check";
import type { TripFile } from "../../core/trip/file.ts";
import { readTripObject } from "../../core/trip/readTrip.ts";
import type { Trip } from "../../core/trip/types.ts";

/* Whole trips as a person might write them, some keys left out, so that members differ in what was told and what was not. */

const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true }).map((value) => Number(value.toFixed(2)));
const maybe = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> =>
  fc.option(arbitrary, { nil: undefined });

const day = fc
  .record({
    high: between(18, 40),
    span: between(4, 16),
    humidity: between(25, 85),
    cloud: maybe(between(0, 90)),
    wind: maybe(between(0.5, 6)),
  })
  .map(({ high, span, humidity, cloud, wind }) => ({
    high: `${high} C`,
    low: `${(high - span).toFixed(1)} C`,
    humidity: `${humidity} %`,
    cloud: cloud === undefined ? undefined : `${cloud} %`,
    wind: wind === undefined ? undefined : `${wind} m/s`,
  }));

const cooler = fc
  .record({
    litres: between(18, 70),
    build: fc.constantFrom("soft", "foam", "thin", "standard", "thick", "vacuum" as const),
    color: fc.constantFrom("white", "light", "medium", "dark" as const),
    start: fc.oneof(
      between(4, 30).map((at) => ({ at: `${at} C` })),
      between(10, 35).map((kept) => ({ kept: `${kept} C` })),
      fc.constant(undefined),
    ),
    openings: maybe(fc.record({ "per day": fc.integer({ min: 0, max: 25 }), for: fc.constant("20 s") })),
    drain: fc.constantFrom("keep", "daily", "open" as const),
    cover: fc.constantFrom("none", "none", "wet cloth", "reflective", "blanket" as const),
  })
  .map(({ litres, ...rest }) => ({ litres, file: { name: "box", size: `${litres} L`, ...rest } }));

const food = fc.record({
  like: fc.constantFrom("milk", "chicken thigh", "ham", "salad", "ground beef", "egg"),
  share: between(0.04, 0.12),
  state: fc.constantFrom("chilled", "chilled", "frozen" as const),
  told: fc.boolean(),
});

const ice = fc.record({
  form: fc.constantFrom("cube", "cube", "crushed", "block", "jug" as const),
  share: between(0.05, 0.2),
  at: maybe(between(-18, 0)),
});

/** One cooler, one to three days (mostly one, for there will be thousands of runs); every number invented. */
export const shortTrip: fc.Arbitrary<TripFile> = fc
  .record({
    days: fc.constantFrom(1, 1, 1, 1, 2, 3),
    weather: fc.array(day, { minLength: 1, maxLength: 3 }),
    latitude: between(25, 50),
    where: fc.constantFrom("camp", "closed car", "trunk", "tent", "indoors" as const),
    shade: maybe(between(0, 100)),
    cooler,
    food: fc.array(food, { minLength: 1, maxLength: 3 }),
    ice: fc.array(ice, { minLength: 1, maxLength: 2 }),
  })
  .map(({ days, weather, latitude, where, shade, cooler: box, food: items, ice: lots }) => ({
    coldstow: 1,
    title: "Anywhere",
    depart: "2027-07-01T09:00",
    return: `2027-07-0${1 + days}T09:00`,
    place: { latitude, longitude: -100, elevation: "300 m", timezone: "America/Chicago" },
    weather: { days: weather },
    legs: [{ where, shade: shade === undefined ? undefined : `${shade} %` }],
    coolers: [box.file],
    food: items.map(({ like, share, state, told }, i) => ({
      name: `item ${i}`,
      like,
      amount: `${(share * box.litres).toFixed(2)} kg`,
      state: like === "salad" || like === "egg" ? "chilled" : state,
      at: told ? (state === "frozen" && like !== "salad" && like !== "egg" ? "-12 C" : "5 C") : undefined,
      in: "box",
    })),
    ice: lots.map(({ form, share, at }) => ({
      form,
      amount: `${(share * box.litres).toFixed(2)} kg`,
      at: at === undefined ? undefined : `${at} C`,
      in: "box",
    })),
  }));

/** Reads a trip as from a file. */
export function read(file: TripFile): Trip {
  const reading = readTripObject(JSON.parse(JSON.stringify(file)), { file: "anywhere.yaml" });
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.trip;
}
