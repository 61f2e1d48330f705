import { describe, expect, it } from "vitest";
import { runFleet, startFleet } from "../../../core/cooler/fleet.ts";
import type { Fleet } from "../../../core/cooler/fleetState.ts";
import { iceOut_s } from "../../../core/forecast/run.ts";
import { DomainError } from "../../../core/quantity/errors.ts";
import { type AnyAct, type AnyTrip, fleetOf } from "../../property/anyCooler.ts";
import { boundsOf } from "../../property/bounds.ts";
import { cooler, food, ice, runTo, trip, weather } from "../../property/plainTrip.ts";
import { expectBooksClosed, expectWithin } from "../../property/sound.ts";

const day_s = 86_400;

/** Runs in six pieces and looks at the books and at every temperature after each. */
function soundRun(any: AnyTrip): Fleet {
  const fleet = startFleet(fleetOf(any));
  const bounds = boundsOf(fleet);
  for (const share of [0.001, 0.1, 0.3, 0.5, 0.8, 1]) {
    runFleet(fleet, share * any.end_s);
    expectBooksClosed(fleet);
    expectWithin(fleet, bounds);
  }
  return fleet;
}

const acts = (...list: AnyAct[]): Pick<AnyTrip, "acts"> => ({ acts: list });

describe("sizes and times at the edge of what people have", () => {
  it("2 L with 1 kg of ice, in every build that is so small", () => {
    for (const build of ["soft", "foam", "thin"] as const)
      soundRun(trip({ coolers: [cooler({ build, litres: 2, ice: [ice({ mass_kg: 1 })], food: [] })] }));
  });

  it("400 L with 200 kg of ice: no more melts than heat came in", () => {
    const fleet = soundRun(
      trip({
        coolers: [cooler({ build: "icebox", litres: 400, ice: [ice({ mass_kg: 200, form: "block" })] })],
      }),
    );
    expect(iceOut_s(fleet, 0)).toBeNull();
  });

  it("thirty days, acts to the end", () => {
    const refill = Array.from({ length: 9 }, (_, i): AnyAct => {
      return { do: "put in ice", at_frac: (i + 1) / 10, cooler: 0, ice: ice({ mass_kg: 5 }) };
    });
    const fleet = soundRun(trip({ end_s: 30 * day_s, weather: weather({ swing_K: 8 }), acts: refill }));
    expect(fleet.boxes[0].books.iceIn_kg).toBeGreaterThan(45);
  });

  it("four hundred lots", () => {
    const many = Array.from({ length: 400 }, (_, i) => food({ mass_kg: 0.05, depth: i % 60 }));
    const fleet = soundRun(trip({ end_s: 6 * 3600, coolers: [cooler({ litres: 150, food: many })] }));
    expect(fleet.lotTracks.length).toBe(401);
  });

  it("nothing in it at all", () => {
    const fleet = soundRun(trip({ coolers: [cooler({ ice: [], food: [] })] }));
    expect(iceOut_s(fleet, 0)).toBe(0);
  });

  it("everything eaten at the first moment", () => {
    const all = [0, 1, 2].map(
      (pick): AnyAct => ({ do: "take out", at_frac: 0, cooler: 0, pick, share_frac: 1 }),
    );
    const fleet = soundRun(trip(acts(...all)));
    expect(fleet.boxes[0].parts.reduce((sum, part) => sum + part.mass_kg, 0)).toBe(0);
  });
});

describe("temperatures at the edge", () => {
  it("ice at −80 °C freezes some of the water it lies in, and gives back what it had", () => {
    soundRun(trip({ coolers: [cooler({ ice: [ice({ start_C: -80, form: "block" })] })] }));
  });

  it("a pot at 70 °C on ice", () => {
    const pot = food({ food: "casserole", mass_kg: 5, start_C: 70, thick_m: 0.15, shape: "lump" });
    soundRun(trip({ coolers: [cooler({ food: [pot] })] }));
  });

  it("a pot at 70 °C, the lid open for an hour over water", () => {
    const pot = food({ food: "casserole", mass_kg: 5, start_C: 70, thick_m: 0.15, shape: "lump" });
    const open: AnyAct = { do: "open", at_frac: 0.02, cooler: 0, for_s: 3600 };
    soundRun(trip({ coolers: [cooler({ ice: [ice({ mass_kg: 1 })], food: [pot] })], acts: [open] }));
  });

  it("in snow at −20 °C the melt freezes again and all of it is ice in the end", () => {
    const cold = weather({ mean_C: -20, humidity_frac: 0.8 });
    const wet = ice({ liquid_frac: 0.5 });
    const fleet = soundRun(trip({ end_s: 6 * day_s, weather: cold, coolers: [cooler({ ice: [wet] })] }));
    const box = fleet.boxes[0];
    expect(fleet.tracks[0].ice_kg.at(-1)).toBeGreaterThan(0.98 * 6);
    expect(box.pool_J).toBeLessThan(0);
  });

  it("60 °C, full sun and a dark lid, dry cloth and wet", () => {
    const oven = weather({ mean_C: 60, humidity_frac: 0.05, sunPeak_W_per_m2: 1100, wind_m_per_s: 0 });
    for (const cover of ["none", "wet cloth", "reflective"] as const)
      soundRun(trip({ weather: oven, coolers: [cooler({ absorptance_frac: 0.9, cover })] }));
  });

  it("a wet cloth drying in desert sun without wind", () => {
    const desert = weather({
      mean_C: 45,
      swing_K: 4,
      humidity_frac: 0.1,
      sunPeak_W_per_m2: 1050,
      wind_m_per_s: 0,
    });
    soundRun(trip({ weather: desert, coolers: [cooler({ cover: "wet cloth", absorptance_frac: 0.9 })] }));
  });
});

describe("dry ice", () => {
  it("with wet ice, kept and drained: gas leaves, water freezes, nothing is colder than the dry ice", () => {
    for (const drain of ["keep", "open"] as const) {
      const both = [ice({ form: "dry ice", mass_kg: 4 }), ice({ liquid_frac: 0.1 })];
      const fleet = soundRun(trip({ end_s: 4 * day_s, coolers: [cooler({ ice: both, drain })] }));
      const { gas_kg } = fleet.boxes[0].books;
      expect(gas_kg + (fleet.tracks[0].dryIce_kg.at(-1) ?? 0)).toBeCloseTo(4, 9);
    }
  });
});

describe("moments", () => {
  it("merging into a full box", () => {
    const full = cooler({ litres: 20, ice: [ice({ mass_kg: 14 })] });
    const fleet = soundRun(
      trip({ coolers: [cooler(), full], acts: [{ do: "merge", at_frac: 0.25, cooler: 0 }] }),
    );
    expect(fleet.boxes[0].parts).toEqual([]);
    // What is there has condensed since.
    expect(fleet.boxes[0].pool_kg).toBeLessThan(1e-3);
  });

  it("putting in at the very end", () => {
    const fleet = soundRun(trip(acts({ do: "put in ice", at_frac: 1, cooler: 0, ice: ice({ mass_kg: 3 }) })));
    expect(fleet.boxes[0].books.iceIn_kg).toBeCloseTo(9, 9);
  });

  it("everything that can be done, at one moment", () => {
    soundRun(
      trip(
        acts(
          { do: "take out", at_frac: 0.3, cooler: 0, pick: 1, share_frac: 0.5 },
          { do: "put in food", at_frac: 0.3, cooler: 0, food: food({ start_C: 25 }) },
          { do: "put in ice", at_frac: 0.3, cooler: 0, ice: ice({ form: "block" }) },
          { do: "drain", at_frac: 0.3, cooler: 0 },
          { do: "cover", at_frac: 0.3, cooler: 0, cover: "wet cloth" },
          { do: "wet cloth", at_frac: 0.3, cooler: 0 },
          { do: "open", at_frac: 0.3, cooler: 0, for_s: 60 },
        ),
      ),
    );
  });

  it("two acts a billionth of a second apart", () => {
    const at = [0.3, 0.3 * (1 + 1e-14), 0.3 * (1 + 1e-13), 0.3 * (1 + 1e-12), 0.3 + 1e-9 / day_s];
    soundRun(
      trip(
        acts(
          ...at.map(
            (at_frac): AnyAct => ({ do: "put in food", at_frac, cooler: 0, food: food({ start_C: 25 }) }),
          ),
        ),
      ),
    );
  });

  it("a short opening does not close a lid that stands open for longer", () => {
    const long: AnyAct = { do: "open", at_frac: 0.25, cooler: 0, for_s: 3600 };
    const short: AnyAct = { do: "open", at_frac: 0.2501, cooler: 0, for_s: 5 };
    const alone = runTo(trip(acts(long)));
    const both = runTo(trip(acts(long, short)));
    const heat = (fleet: Fleet): number => fleet.boxes[0].books.openingExposure_J;
    expect(heat(both)).toBeGreaterThan(0.95 * heat(alone));
  });
});

describe("habits", () => {
  it("sealed until after the return is never opened", () => {
    const shut = cooler({ openings: { perDay: 40, each_s: 60, from_s: 0, to_s: day_s }, sealed_frac: 1.5 });
    expect(soundRun(trip({ coolers: [shut] })).boxes[0].books.openingAir_J).toBe(0);
  });

  it("a thousand long openings a day are a lid that stands open", () => {
    const wild = cooler({ openings: { perDay: 1000, each_s: 600, from_s: 0, to_s: day_s } });
    soundRun(trip({ weather: weather({ sunPeak_W_per_m2: 900, humidity_frac: 0.9 }), coolers: [wild] }));
  });
});

describe("numbers that no cooler can have are refused by name", () => {
  const refused = (any: AnyTrip): void => expect(() => runTo(any)).toThrow(DomainError);
  const lot = (over: Parameters<typeof food>[0]): AnyTrip =>
    trip({ coolers: [cooler({ food: [food(over)] })] });

  it("masses, pieces and temperatures of lots", () => {
    refused(lot({ mass_kg: Number.NaN }));
    refused(lot({ mass_kg: -1 }));
    refused(lot({ thick_m: 0 }));
    refused(lot({ start_C: Number.NaN }));
    refused(trip({ coolers: [cooler({ ice: [ice({ pieces: 0 })] })] }));
    refused(trip({ coolers: [cooler({ ice: [ice({ liquid_frac: 1.5 })] })] }));
  });

  it("shares, and lots and coolers that are not there", () => {
    const taking = (share_frac: number): AnyTrip =>
      trip(acts({ do: "take out", at_frac: 0.5, cooler: 0, pick: 0, share_frac }));
    refused(taking(1.5));
    refused(taking(-0.5));
    refused(taking(Number.NaN));
    const input = fleetOf(trip());
    const run = (act: (typeof input.acts)[number]): (() => void) => {
      return () => runFleet(startFleet({ ...input, acts: [act] }), 3600);
    };
    expect(run({ do: "take out", t_s: 60, lot: "no such lot", share_frac: 1 })).toThrow(DomainError);
    expect(run({ do: "drain", t_s: 60, cooler: 7 })).toThrow(DomainError);
    expect(run({ do: "merge", t_s: 60, from: 0, into: 0 })).toThrow(DomainError);
    expect(run({ do: "drain", t_s: Number.NaN, cooler: 0 })).toThrow(DomainError);
  });
});
