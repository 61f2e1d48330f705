import { describe, expect, it } from "vitest";
import { runMembers } from "../../../core/ensemble/runMembers.ts";
import type { Draws } from "../../../core/ensemble/types.ts";
import type { Trip } from "../../../core/trip/types.ts";
import { gainOf } from "../../../core/whatif/gains.ts";
import { allKey, habitKey, variantOf } from "../../../core/whatif/variants.ts";
import { oneCooler, type Small } from "./smallTrip.ts";

const nMembers = 24;
const run = (trip: Trip): Draws => runMembers(trip, { from: 0, to: nMembers, seed: 7, series: false });
/** The trip itself where it has the way already. */
const made = (trip: Trip, key: string): Trip => variantOf(trip, key) ?? trip;
const median = (values: Iterable<number>): number => [...values].sort((a, b) => a - b)[nMembers / 2]!;

/** Hours of ice by member, the good way less the bad way. */
function iceGains_h(trip: Trip, habit: string): number[] {
  const [good, bad] = [true, false].map(
    (way) => run(made(trip, habitKey(habit, way))).coolers[0]!.iceCarriedOn_h,
  );
  return [...good!].map((hours, m) => hours - bad![m]!);
}

/** Three days, so that the ice ends on the way and nothing is carried on. */
const long = (change: (draft: Small) => void = () => {}): Trip =>
  oneCooler((draft) => {
    draft.return = "2027-06-21T20:00";
    for (const item of draft.food) delete item.eat;
    change(draft);
  });

describe("habits in a place where a law says how they come out", () => {
  it("shade gains ice in the desert in nine members of ten, and never loses an hour", () => {
    // It also hides the cold night sky: a box that takes up little sun may lose some minutes by it.
    const gains_h = iceGains_h(long(), "shade");
    expect(gains_h.filter((gain_h) => gain_h > 0).length).toBeGreaterThanOrEqual(0.9 * gains_h.length);
    expect(Math.min(...gains_h)).toBeGreaterThan(-1);
  }, 60_000);

  it("a wet cloth gains less where it is humid than where it is dry", () => {
    const at = (humidity: string): number =>
      median(
        iceGains_h(
          long((draft) => {
            draft.legs[0].shade = "80 %";
            draft.weather.days[0].humidity = humidity;
          }),
          "wet cloth",
        ),
      );
    const [dry_h, humid_h] = [at("15 %"), at("85 %")];
    expect(dry_h).toBeGreaterThan(0);
    expect(humid_h).toBeLessThan(dry_h / 2);
  }, 60_000);

  it("a tent at noon loses against shade, in every member", () => {
    const noon = oneCooler((draft) => {
      draft.depart = "2027-06-18T10:00";
      draft.return = "2027-06-18T16:00";
      draft.legs[0].shade = "80 %";
      for (const item of draft.food) item.eat = "day 1 16:00";
    });
    const [shade, tent] = [noon, made(noon, habitKey("tent", false))].map(
      (trip) => run(trip).coolers[0]!.iceLeft_kg,
    );
    expect(Math.min(...[...shade!].map((kg, m) => kg - tent![m]!))).toBeGreaterThan(0);
  }, 60_000);

  it("ice from a deep freeze is worth at most the cold it brings: 18 K at 2.1 kJ/kgK on 334 kJ/kg, and its dryness", () => {
    const trip = long();
    const [cold, shop] = [true, false].map((way) => run(made(trip, habitKey("deep-frozen ice", way))));
    const ratios = [...cold!.coolers[0]!.iceCarriedOn_h].map(
      (h, m) => h / shop!.coolers[0]!.iceCarriedOn_h[m]!,
    );
    expect(median(ratios)).toBeGreaterThan(1.03);
    expect(median(ratios)).toBeLessThan(1 + (18 * 2.1) / 334 + 0.1);
  }, 60_000);

  it("every habit good is no worse than every habit bad, for food and ice, nine times in ten", () => {
    const trip = long();
    const [bad, good] = [false, true].map((way) => made(trip, allKey(way)));
    const gain = gainOf({ trip: bad!, draws: run(bad!) }, { trip: good!, draws: run(good!) });
    expect(gain.ice_h.p10).toBeGreaterThan(0);
    expect(gain.food_h.p10).toBeGreaterThanOrEqual(0);
    expect(gain.warm_h.p10).toBeGreaterThanOrEqual(0);
  }, 60_000);
});

describe("members of one number", () => {
  it("stand in the same world: half the openings lose no ice in any of them, though they differ by hours", () => {
    const trip = long();
    const written = run(trip).coolers[0]!.iceCarriedOn_h;
    const fewer = run(made(trip, habitKey("open half as often", true))).coolers[0]!.iceCarriedOn_h;
    const gains = [...fewer].map((hours, m) => hours - written[m]!);
    expect(Math.max(...written) - Math.min(...written)).toBeGreaterThan(5);
    expect(Math.min(...gains)).toBeGreaterThan(-0.05);
    expect(Math.max(...gains)).toBeLessThan(5);
  }, 60_000);
});
