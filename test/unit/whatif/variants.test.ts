import { describe, expect, it } from "vitest";
import { coolerResult } from "../../../core/forecast/coolerResult.ts";
import { runTrip } from "../../../core/forecast/run.ts";
import { DomainError } from "../../../core/quantity/errors.ts";
import type { Trip } from "../../../core/trip/types.ts";
import { packed_frac } from "../../../core/whatif/filled.ts";
import { habitsFor } from "../../../core/whatif/habitTable.ts";
import { sayingsFor } from "../../../core/whatif/sayingTable.ts";
import { stresses } from "../../../core/whatif/stressTable.ts";
import { allKey, habitKey, sayingKey, stressKey, variantOf } from "../../../core/whatif/variants.ts";
import { oneCooler, smallTrip } from "./smallTrip.ts";

const trip = smallTrip();

function keysOf(of: Trip): string[] {
  return [
    ...habitsFor(of).flatMap(({ key }) => [habitKey(key, true), habitKey(key, false)]),
    allKey(true),
    allKey(false),
    ...stresses.map(({ key }) => stressKey(key)),
    ...sayingsFor(of).flatMap(({ key }) => [sayingKey(key, "one"), sayingKey(key, "other")]),
  ];
}

/** What of a trip is plain data; the weather is a function. */
const plain = ({ weather: _, ...rest }: Trip): string => JSON.stringify(rest);

describe("a variant of a trip", () => {
  it("is found by a key of its own", () => {
    const keys = keysOf(trip);
    expect(keys.length).toBeGreaterThan(60);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it("is the same every time it is asked for, and leaves the trip as it was", () => {
    const before = plain(trip);
    for (const key of keysOf(trip)) {
      const [one, two] = [variantOf(trip, key), variantOf(trip, key)];
      expect(one === null ? null : plain(one), key).toBe(two === null ? null : plain(two));
    }
    expect(plain(trip)).toBe(before);
  });

  it("keeps coolers, food and ice in their places, so that members line up", () => {
    const ids = ({ food, ice }: Trip): string[] => [...food, ...ice].map(({ id }) => id);
    for (const key of keysOf(trip)) {
      const variant = variantOf(trip, key);
      if (variant === null) continue;
      expect(ids(variant), key).toEqual(ids(trip));
      expect(
        variant.coolers.map(({ name }) => name),
        key,
      ).toEqual(["galley", "bar"]);
      expect(
        variant.food.map(({ cooler }) => cooler === null),
        key,
      ).toEqual([false, false, false]);
      expect(variant.legs.at(-1)!.to_s, key).toBe(trip.duration_s);
    }
  });

  it("packs what the forecast can run", () => {
    for (const key of keysOf(trip)) {
      const variant = variantOf(trip, key);
      if (variant !== null) expect(runTrip(variant).t_s, key).toBe(trip.duration_s);
    }
  }, 60_000);

  it("is refused by a key that names none", () => {
    expect(() => variantOf(trip, "habit: sing to it: good")).toThrow(DomainError);
  });

  it("is null where the trip cannot have it", () => {
    expect(variantOf(oneCooler(), habitKey("merge", true))).toBeNull();
    expect(variantOf(trip, habitKey("ride in the cabin", true))).toBeNull();
  });
});

const made = (key: string, good: boolean, of: Trip = trip): Trip => variantOf(of, habitKey(key, good))!;

describe("single habits", () => {
  it("half the openings are half, twice are twice", () => {
    const perDay = (of: Trip): (number | undefined)[] => of.coolers.map(({ openings }) => openings?.perDay);
    expect(perDay(made("open half as often", true))).toEqual([4, 6]);
    expect(perDay(made("open twice as often", false))).toEqual([16, 24]);
  });

  it("openings of 15 s and less are left alone", () => {
    expect(made("open briefly", true).coolers.map(({ openings }) => openings!.each_s)).toEqual([15, 15]);
  });

  it("the same mass of ice changes its form only", () => {
    const blocks = made("block ice", true);
    expect(blocks.ice.map(({ form }) => form)).toEqual(["block", "gel pack", "block"]);
    expect(blocks.ice.map(({ mass_kg }) => mass_kg)).toEqual(trip.ice.map(({ mass_kg }) => mass_kg));
  });

  it("drinks together take the other cooler's ice and openings along, or are told not to fit", () => {
    const together = made(
      "drinks apart",
      false,
      smallTrip((draft) => {
        draft.coolers[0].size = "80 L";
      }),
    );
    expect(together.food.map(({ cooler }) => cooler)).toEqual([0, 0, 0]);
    expect(together.ice.map(({ cooler }) => cooler)).toEqual([0, 0, 0]);
    expect(together.coolers.map(({ openings }) => openings?.perDay ?? 0)).toEqual([20, 0]);
    expect(
      variantOf(
        smallTrip((draft) => {
          draft.coolers[0].size = "18 L";
        }),
        habitKey("drinks apart", false),
      ),
    ).toBeNull();
  });

  it("shade reaches 80 % in the open, and a tent has its own", () => {
    expect(made("shade", true).legs[0]!.shade_frac).toBe(0.8);
    expect(made("shade", false).legs[0]!.shade_frac).toBe(0);
    expect(made("tent", false).legs[0]).toMatchObject({ place: "tent", shade_frac: null });
  });

  it("a cover replaces what the file says of covering on the way", () => {
    const later = smallTrip((draft) => {
      draft.events.push({ at: "day 1 12:00", do: "cover", cooler: "bar", cover: "wet cloth" });
    });
    expect(made("reflective", true, later).events).toEqual([]);
    expect(made("reflective", true, later).coolers.map(({ cover }) => cover)).toEqual([
      "reflective",
      "reflective",
    ]);
  });

  it("each cooler's drain is asked by itself", () => {
    expect(made("drain galley", false).coolers.map(({ drain }) => drain)).toEqual(["open", "open"]);
    expect(made("drain bar", true).coolers.map(({ drain }) => drain)).toEqual(["keep", "keep"]);
  });

  it("without a merge one is made halfway, with one it is left out", () => {
    const merged = made(
      "merge",
      true,
      smallTrip((draft) => {
        draft.coolers[0].size = "60 L";
      }),
    );
    expect(merged.events).toMatchObject([{ do: "merge", t_s: trip.duration_s / 2, from: 1, into: 0 }]);
    expect(made("merge", false, merged).events).toEqual([]);
  });
});

describe("all habits at once", () => {
  it("leave alone what people disagree on and what is packed where", () => {
    for (const good of [true, false]) {
      const all = variantOf(trip, allKey(good))!;
      expect(all.coolers.map(({ drain }) => drain)).toEqual(["keep", "open"]);
      expect(all.ice.map(({ form, cooler }) => [form, cooler])).toEqual(
        trip.ice.map(({ form, cooler }) => [form, cooler]),
      );
    }
  });
});

describe("how full a cooler is, for telling whether a change fits", () => {
  it("comes within a tenth of the room of what the packing itself finds", () => {
    const fleet = runTrip(trip);
    for (const i of [0, 1])
      expect(Math.abs(packed_frac(trip, i) - coolerResult(trip, fleet, i).filled_frac)).toBeLessThan(0.1);
  });
});
