import fc from "fast-check";
import { stringify } from "yaml";

/* Trips as people leave them to the planner: what is eaten when is written, where it lies and how much ice mostly not. */

type Entry = Record<string, unknown>;

const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 100 }).map((i) => Number((min + ((max - min) * i) / 100).toPrecision(3)));
const some = <T>(share_frac: number, arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> =>
  fc.nat(99).chain((i) => (i < 100 * share_frac ? arbitrary : fc.constant(undefined)));

const day = fc
  .record({
    high: between(14, 40),
    span: between(4, 18),
    humidity: between(15, 90),
    cloud: between(0, 100),
    wind: between(0.5, 7),
  })
  .map(({ high, span, humidity, cloud, wind }) => ({
    high: `${high} C`,
    low: `${(high - span).toFixed(1)} C`,
    // Where days are that hot, air that damp is not met.
    humidity: `${Math.min(humidity, Math.round(60 - 4 * Math.max(0, high - 32)) + Math.max(0, 30 - high))} %`,
    cloud: `${cloud} %`,
    wind: `${wind} m/s`,
  }));

const places = ["camp", "camp", "tent", "raft", "boat", "trunk", "indoors", "truck bed"] as const;

const legs = fc
  .record({ drive: fc.constantFrom("cabin", "trunk", "closed car"), there: fc.constantFrom(...places) })
  .chain(({ drive, there }) =>
    fc.record({ shade: between(20, 100), water: between(10, 26) }).map(({ shade, water }) => [
      { until: "day 1 10:00", where: drive },
      {
        where: there,
        shade: `${shade} %`,
        ...(there === "raft" || there === "boat" ? { water: `${water} C` } : {}),
      },
    ]),
  );

const names = ["galley", "bar", "spare"];

const cooler = fc.record({
  litres: between(22, 95),
  build: fc.constantFrom("soft", "foam", "thin", "standard", "standard", "thick", "thick", "vacuum"),
  color: fc.constantFrom("white", "light", "medium", "dark"),
  start: fc.oneof(
    between(4, 30).map((at): Entry => ({ at: `${at} C` })),
    between(15, 32).map((kept): Entry => ({ kept: `${kept} C` })),
    fc.constant<Entry>({ prechill: "12 h", with: "3 kg", kept: "22 C" }),
  ),
  openings: fc
    .record({ perDay: fc.integer({ min: 2, max: 20 }), for_s: fc.integer({ min: 10, max: 40 }) })
    .map(({ perDay, for_s }) => ({ "per day": perDay, for: `${for_s} s` })),
  drain: fc.constantFrom("keep", "keep", "daily", "open"),
  cover: fc.constantFrom("none", "none", "none", "reflective", "blanket", "wet cloth"),
  top: fc.constantFrom("none", "none", "foam sheet"),
});

const kinds = [
  { like: "chicken thigh", raw: true },
  { like: "ground beef", raw: true },
  { like: "steak", raw: true },
  { like: "lean fish", raw: true },
  { like: "stew" },
  { like: "chili" },
  { like: "lasagna" },
  { like: "ham" },
  { like: "hummus" },
  { like: "milk" },
  { like: "yogurt" },
  { like: "cheddar" },
  { like: "butter" },
  { like: "egg" },
  { like: "lettuce" },
  { like: "tomato" },
  { like: "apple" },
  { like: "soft drink", drink: true },
  { like: "beer", drink: true },
  { like: "bread", dry: true },
] as const;

const food = fc.record({
  kind: fc.constantFrom(...kinds),
  share: between(0.5, 3),
  meal: fc.nat(1000),
  meals: fc.constantFrom(1, 1, 1, 2, 3),
  isTight: fc.nat(4).map((i) => i > 0),
  told: some(0.2, fc.constantFrom("chilled", "frozen")),
  place: some(0.2, fc.nat(2)),
  bag: some(0.3, between(20, 50)),
  at: between(1, 5),
});

const supply = fc.record({
  block: some(
    0.6,
    fc.record({ each: between(2, 10), at: between(-14, -2), max: fc.integer({ min: 2, max: 12 }) }),
  ),
  cube: some(0.8, fc.record({ each: between(2, 6), at: between(-6, -1) })),
  jug: some(0.5, fc.record({ each: between(1, 4), max: fc.integer({ min: 2, max: 10 }) })),
  run: some(
    0.35,
    fc.record({
      each: between(2, 6),
      days: fc.subarray([1, 2, 3, 4, 5], { minLength: 1 }),
      hour: fc.constantFrom("11:00", "15:00", "17:30"),
      closed: some(
        0.4,
        fc.subarray(["Friday", "Saturday", "Sunday", "Monday"], { minLength: 1, maxLength: 2 }),
      ),
      open: some(0.5, fc.constant("09:00-18:00")),
      chance: some(0.4, between(40, 90)),
      away: some(0.5, between(20, 120)),
      max: fc.integer({ min: 1, max: 6 }),
    }),
  ),
  priced: fc.boolean(),
});

const plan = fc.record({
  nDays: fc.integer({ min: 2, max: 5 }),
  latitude: between(25, 60),
  weather: fc.array(day, { minLength: 1, maxLength: 5 }),
  legs,
  confidence: fc.constantFrom(75, 80, 90, 90),
  party: fc.record({ adults: fc.integer({ min: 1, max: 8 }), vulnerable: fc.nat(5).map((i) => i === 0) }),
  coolers: fc.array(cooler, { minLength: 1, maxLength: 3 }),
  hasBar: fc.boolean(),
  filled: between(0.12, 0.5),
  food: fc.array(food, { minLength: 2, maxLength: 12 }),
  supply,
  freezer: some(0.7, between(10, 90)),
  ice: some(0.2, fc.record({ pieces: fc.integer({ min: 1, max: 3 }), each: between(2, 5) })),
});
type Drawn = typeof plan extends fc.Arbitrary<infer T> ? T : never;

/** Meals from the first lunch to the last: departure is at 07:00, the return at 16:00. */
function mealsOf(nDays: number): string[] {
  const all = Array.from({ length: nDays }, (_, i) =>
    ["breakfast", "lunch", "dinner"].map((meal) => `day ${i + 1} ${meal}`),
  ).flat();
  return all.slice(1, -1);
}

function foodEntries({ food, nDays, coolers, filled, hasBar }: Drawn): Entry[] {
  const meals = mealsOf(nDays);
  const room_L = coolers.reduce((sum, { litres }) => sum + litres, 0);
  const shares = food.reduce((sum, { share }) => sum + share, 0);
  const barAt = hasBar && coolers.length > 1 ? 1 : null;
  return food.map(({ kind, share, meal, meals: n, isTight, told, place, bag, at }, i) => {
    const first = meal % meals.length;
    const when = meals.slice(first, first + n);
    const isDrink = "drink" in kind;
    const pinned = place === undefined || (place % coolers.length === barAt && !isDrink) ? null : place;
    const canFreeze = !isDrink && !["egg", "lettuce", "tomato", "apple"].includes(kind.like);
    const state = told === "frozen" && !canFreeze ? "chilled" : told;
    return {
      name: `${kind.like} ${i + 1}`,
      amount: `${Math.max(0.1, (share / shares) * filled * room_L).toFixed(2)} kg`,
      like: kind.like,
      ...("raw" in kind ? { raw: true } : {}),
      ...("dry" in kind ? { state: "dry" } : state === undefined ? {} : { state }),
      ...(state === "chilled" && !("dry" in kind) ? { at: `${at} C` } : {}),
      ...(bag === undefined || isDrink ? {} : { shape: { bag: `${bag} mm` } }),
      watertight: isTight,
      eat: isDrink ? "throughout" : when.length === 1 ? when[0] : when,
      ...("dry" in kind ? { in: "dry box" } : pinned === null ? {} : { in: names[pinned % coolers.length] }),
    };
  });
}

function supplyEntries({ supply: { block, cube, jug, run, priced }, nDays }: Drawn): Entry[] {
  const price = (of: number): Entry => (priced ? { price: of } : {});
  const visits = run?.days.filter((at) => at < nDays).map((at) => `day ${at} ${run.hour}`) ?? [];
  return [
    ...(block === undefined
      ? []
      : [
          {
            form: "block",
            each: `${block.each} kg`,
            at: `${block.at} C`,
            ...price(5),
            where: "ice works",
            max: block.max,
          },
        ]),
    ...(cube === undefined
      ? []
      : [{ form: "cube", each: `${cube.each} kg`, at: `${cube.at} C`, ...price(3.5), where: "shop" }]),
    ...(jug === undefined
      ? []
      : [{ form: "jug", each: `${jug.each} L`, at: "-16 C", ...price(0), where: "home", max: jug.max }]),
    ...(run === undefined || visits.length === 0
      ? []
      : [
          {
            form: "cube",
            each: `${run.each} kg`,
            at: "-2 C",
            ...price(4.5),
            where: "jetty",
            when: visits,
            ...(run.open === undefined ? {} : { open: run.open }),
            ...(run.closed === undefined ? {} : { closed: run.closed }),
            ...(run.chance === undefined ? {} : { chance: `${run.chance} %` }),
            ...(run.away === undefined ? {} : { away: `${run.away} min` }),
            max: run.max,
          },
        ]),
  ];
}

function textOf(drawn: Drawn): string {
  const { nDays, latitude, weather, legs: where, confidence, party, coolers, hasBar, freezer, ice } = drawn;
  const file = {
    coldstow: 1,
    title: "Any trip",
    depart: "2027-07-02T07:00",
    return: `2027-07-0${1 + nDays}T16:00`,
    place: { latitude, longitude: -100, elevation: "300 m", timezone: "America/Chicago" },
    party,
    limit: "consumer",
    confidence: `${confidence} %`,
    weather: { days: weather },
    legs: where,
    coolers: coolers.map(({ litres, ...rest }, i) => ({
      name: names[i],
      size: `${litres} L`,
      holds: hasBar && i === 1 ? "drinks" : i === 0 ? "food" : "any",
      ...rest,
    })),
    food: foodEntries(drawn),
    ...(ice === undefined
      ? {}
      : { ice: [{ form: "cube", pieces: ice.pieces, each: `${ice.each} kg`, at: "-2 C", in: "galley" }] }),
    supply: supplyEntries(drawn),
    ...(freezer === undefined ? {} : { freezer: { space: `${freezer} L`, at: "-17 C" } }),
    carry: { people: 2 },
  };
  // Anchors are refused by the reader, and nobody types them.
  return stringify(file, { aliasDuplicateObjects: false });
}

/** The trip file of a number: one to three coolers, two to five days, two to twelve foods; every figure invented. */
export function plannedTripText(seed: number): string {
  return textOf(fc.sample(plan, { seed, numRuns: 1 })[0]!);
}
