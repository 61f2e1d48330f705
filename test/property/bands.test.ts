import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { joinDraws } from "../../core/ensemble/joinDraws.ts";
import { bandOf } from "../../core/ensemble/quantiles.ts";
import { runMembers } from "../../core/ensemble/runMembers.ts";
import type { CoolerDraws, Draws } from "../../core/ensemble/types.ts";
import { withBands } from "../../core/ensemble/withBands.ts";
import { forecast } from "../../core/forecast/forecast.ts";
import { carriedOnUntil_s } from "../../core/forecast/run.ts";
import type { TripFile } from "../../core/trip/file.ts";
import type { Trip } from "../../core/trip/types.ts";
import { runs } from "./runs.ts";
import { read, shortTrip } from "./shortTrip.ts";

const members = 32;
const drawn = (trip: Trip, seed: number, from = 0, to = members, series = false): Draws =>
  runMembers(trip, { from, to, seed, series });

const seeds = fc.integer({ min: 0, max: 2 ** 32 - 1 });

/** Draws as plain lists, so that two of them can be compared bit by bit; NaN equals NaN. */
const plain = (draws: Draws): unknown =>
  JSON.parse(
    JSON.stringify(draws, (_, value) =>
      ArrayBuffer.isView(value)
        ? Array.from(value as Float64Array, (x) => (Object.is(x, -0) ? "-0" : String(x)))
        : value,
    ),
  );

describe("members", () => {
  it("are the same again with the same seed, and others with another", () => {
    fc.assert(
      fc.property(shortTrip, seeds, (file, seed) => {
        const once = plain(drawn(read(file), seed, 0, 8, true));
        expect(plain(drawn(read(file), seed, 0, 8, true))).toEqual(once);
        expect(plain(drawn(read(file), (seed + 1) % 2 ** 32, 0, 8, true))).not.toEqual(once);
      }),
      runs(4),
    );
  });

  it("are the same alone, in pieces and in a batch", () => {
    const cuts = fc.uniqueArray(fc.integer({ min: 1, max: members - 1 }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(shortTrip, seeds, cuts, (file, seed, at) => {
        const trip = read(file);
        const ends = [0, ...at.sort((a, b) => a - b), members];
        const pieces = ends.slice(1).map((to, i) => drawn(trip, seed, ends[i]!, to, true));
        const whole = drawn(trip, seed, 0, members, true);
        expect(plain(joinDraws(pieces))).toEqual(plain(whole));
        const alone = drawn(trip, seed, at[0]!, at[0]! + 1).coolers[0]!;
        for (const key of Object.keys(alone) as (keyof CoolerDraws)[])
          expect(alone[key][0]).toBe(whole.coolers[0]![key][at[0]!]);
      }),
      runs(4),
    );
  });

  it("do not depend on the order of the food in the file", () => {
    fc.assert(
      fc.property(
        shortTrip.filter(({ food }) => food!.length > 1),
        seeds,
        (file, seed) => {
          const [one, other] = [file, { ...file, food: [...file.food!].reverse() }].map((f) =>
            drawn(read(f), seed),
          );
          for (const key of ["iceCarriedOn_h", "warmest_C"] as const) {
            const [a, b] = [one!.coolers[0]![key], other!.coolers[0]![key]];
            // Sums in another order differ in their last bits, and a step may then end elsewhere.
            const apart = a.map((value, i) => Math.abs(value / b[i]! - 1));
            expect(Math.max(...apart)).toBeLessThan(1e-6);
          }
        },
      ),
      runs(5),
    );
  });
});

type Named = { p10: unknown; p50: unknown; p90: unknown };
const isBand = (value: object): value is Named => "p10" in value && "p90" in value;

/** Every band of a result, of moments or of series, with the path to it. */
function bandsIn(value: unknown, path = ""): [path: string, band: Named][] {
  if (typeof value !== "object" || value === null) return [];
  if (isBand(value)) return [[path, value]];
  return Object.entries(value).flatMap(([key, inner]) => bandsIn(inner, `${path}.${key}`));
}

const late = (value: unknown): number => (value === null ? Number.POSITIVE_INFINITY : (value as number));

describe("bands", () => {
  it("have their three values in order, everywhere", () => {
    fc.assert(
      fc.property(shortTrip, seeds, (file, seed) => {
        const trip = read(file);
        const { result } = withBands(
          forecast(trip, { effects: false }),
          drawn(trip, seed, 0, members, true),
          seed,
        );
        const bands = bandsIn(result);
        expect(bands.length).toBeGreaterThan(10);
        for (const [path, { p10, p50, p90 }] of bands) {
          const lists = [p10, p50, p90].map((one) => (Array.isArray(one) ? one : [one]).map(late));
          const wrong = lists[1]!.filter(
            (middle, i) => !(lists[0]![i]! <= middle && middle <= lists[2]![i]!),
          );
          expect({ path, wrong }).toEqual({ path, wrong: [] });
        }
      }),
      runs(6),
    );
  });
});

/** In the open, warm outside, cold inside, no freezing of what lies beside the ice: heat flows one way. */
const warmTrip: fc.Arbitrary<TripFile> = shortTrip.map((file) => ({
  ...file,
  legs: [{ where: "camp" as const, shade: "60 %" }],
  weather: {
    days: file.weather!.days!.map((day) => ({ ...day, high: "33 C", low: "22 C", humidity: "50 %" })),
  },
  coolers: file.coolers!.map((cooler) => ({ ...cooler, start: { at: "6 C" } })),
  food: file.food!.map((item) => ({ ...item, state: "chilled" as const, at: "5 C" })),
  ice: file.ice!.map((lot) => ({ ...lot, at: "-2 C" })),
}));

/** 0.3 % and three minutes are the steps' own, as members are stepped. */
const steps = (hours: number): number => 0.003 * hours + 0.05;

function everyQuantileLater(before: Trip, after: Trip, seed: number): void {
  const [a, b] = [before, after].map((trip) => drawn(trip, seed).coolers[0]!.iceCarriedOn_h);
  const sorted = [a!, b!].map((values) => values.slice().sort());
  const sooner = sorted[0]!.filter((hours, i) => !(sorted[1]![i]! > hours - steps(hours)));
  expect([...sooner]).toEqual([]);
  // And it moved: the middle by more than the steps do.
  const [middle, later] = [bandOf(a!).p50!, bandOf(b!).p50!];
  // Where most of the ice outlasts what is carried on, there is nothing further to move to.
  const most_h = carriedOnUntil_s(after.duration_s) / 3600;
  expect(later).toBeGreaterThan(Math.min(most_h - steps(most_h), middle + steps(middle)));
}

describe("the end of the ice moves", () => {
  it("later at every quantile with a quarter more ice", () => {
    fc.assert(
      fc.property(warmTrip, seeds, (file, seed) => {
        const more = file.ice!.map((lot) => ({
          ...lot,
          amount: `${1.25 * Number.parseFloat(lot.amount!)} kg`,
        }));
        everyQuantileLater(read(file), read({ ...file, ice: more }), seed);
      }),
      runs(6),
    );
  });

  it("earlier at every quantile with a forecast hotter by 4 K", () => {
    fc.assert(
      fc.property(warmTrip, seeds, (file, seed) => {
        const days = file.weather!.days!.map((day) => ({ ...day, high: "37 C", low: "26 C" }));
        everyQuantileLater(read({ ...file, weather: { days } }), read(file), seed);
      }),
      runs(6),
    );
  });
});
