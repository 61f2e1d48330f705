import { bodyOf } from "../../core/cooler/builds.ts";
import { iceOut_s } from "../../core/forecast/run.ts";
import { foodLot, foodOver_s, iceLot, packAndRun, stillRoom } from "./lab.ts";
import { type Sample, span } from "./sample.ts";

const limit_C = 40 / 9;

interface Pair {
  build: "standard" | "thick";
  ice_kg: number;
  food_kg: number;
  room_C: number;
}

/** Hours of ice, and hours from its end until the first food is over 40 °F. */
function outcome(pair: Pair, drain: "keep" | "open"): { ice_h: number; after_h: number } {
  const half = { mass_kg: pair.food_kg / 2, start_C: 3 };
  const fleet = packAndRun({
    body: bodyOf(pair.build, 0.052, 0.25),
    around: stillRoom(pair.room_C),
    lots: [iceLot({ mass_kg: pair.ice_kg }), foodLot("chicken thigh", half), foodLot("milk", half)],
    start_C: 10,
    drain,
    end_s: 14 * 86_400,
  });
  const ice_s = iceOut_s(fleet, 0)!;
  return { ice_h: ice_s / 3600, after_h: (foodOver_s(fleet, limit_C, 6 * 3600) - ice_s) / 3600 };
}

/**
 * Two alike 55-qt coolers, meltwater kept and drained, six days. Loads and room were not told to us: 12–20 kg of cubes, 4–8 kg of
 * food, 22–30 °C are taken.
 */
const pairs: readonly Pair[] = [
  { build: "standard", ice_kg: 14, food_kg: 6, room_C: 22 },
  { build: "standard", ice_kg: 20, food_kg: 4, room_C: 30 },
  { build: "thick", ice_kg: 12, food_kg: 8, room_C: 26 },
  { build: "thick", ice_kg: 20, food_kg: 6, room_C: 28 },
];

export function pairedSamples(): Sample[] {
  const both = pairs.map((pair) => ({ kept: outcome(pair, "keep"), drained: outcome(pair, "open") }));
  const row = { source: "paired-coolers", mark: "R" } as const;
  return [
    {
      name: "55-qt coolers: ice life drained / kept",
      unit: "",
      ...row,
      published: [0.85, 1.15],
      ours: span(both.map(({ kept, drained }) => drained.ice_h / kept.ice_h)),
    },
    {
      name: "… cold hours after the last ice, kept − drained",
      unit: "h",
      ...row,
      published: [0, Number.POSITIVE_INFINITY],
      ours: span(both.map(({ kept, drained }) => kept.after_h - drained.after_h)),
    },
  ];
}
