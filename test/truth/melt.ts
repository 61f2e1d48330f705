import { balanceOf } from "../../core/cooler/balance.ts";
import { bodyOf } from "../../core/cooler/builds.ts";
import type { Lot } from "../../core/cooler/types.ts";
import { iceOut_s } from "../../core/forecast/run.ts";
import { foodLot, iceLot, packAndRun, stillRoom } from "./lab.ts";
import { type Sample, span } from "./sample.ts";

const pound_kg = 0.45359237;
const fahrenheit_C = (f: number) => (f - 32) / 1.8;

/** Ice that these lots melt by coming down to the ice: the difference of two runs, with and without them. */
function ice_kg(lots: readonly Lot[]): number {
  const left = (some: readonly Lot[]) => {
    const ice = iceLot({ mass_kg: 15, liquid_frac: 0.2 });
    const body = bodyOf("thick", 0.06, 0.25);
    const fleet = packAndRun({
      body,
      around: stillRoom(4),
      lots: [ice, ...some],
      start_C: 0,
      end_s: 36 * 3600,
    });
    return fleet.tracks[0]!.ice_kg.at(-1)!;
  };
  return left([]) - left(lots);
}

/** Heat through walls and joint, and from the body, until the ice is gone, kJ for each kilogram of ice. */
function taken_kJ(start_C: number, build: "thin" | "thick"): number {
  const mass_kg = 12;
  const lots = [iceLot({ mass_kg, start_C })];
  const bench = { body: bodyOf(build, 0.045, 0.25), around: stillRoom(25), lots, start_C: 0 };
  const gone_s = iceOut_s(packAndRun({ ...bench, end_s: 12 * 86_400 }), 0)!;
  const { lid_J, sides_J, base_J, seal_J, body_J } = balanceOf(
    packAndRun({ ...bench, end_s: gone_s }).boxes[0]!,
  );
  return (lid_J + sides_J + base_J + seal_J + body_J) / mass_kg / 1000;
}

/** Sums of heat that the whole box must give back: what things cost in ice, and what cold ice is worth. */
export function meltSamples(): Sample[] {
  const cans = foodLot("soft drink", {
    mass_kg: 6 * 0.366,
    pieces: 6,
    start_C: fahrenheit_C(75),
    thick_m: 0.066,
  });
  const cod = (start_C: number) => foodLot("cod", { mass_kg: 5, start_C, thick_m: 0.03 });
  // The published sum stops at 38 °F, the box goes on to 32 °F: 37/43 of what it melts.
  const toward38 = 37 / 43;
  return [
    {
      name: "six 12-oz cans from 75 to 38 °F melt",
      unit: "lb",
      source: "derivation",
      mark: "C",
      published: [1.08, 1.32],
      ours: span([(ice_kg([cans]) * toward38) / pound_kg]),
    },
    {
      name: "lean fish, ice per kilogram and kelvin",
      unit: "g",
      source: "fao-331",
      mark: "R",
      published: [10, 12.5],
      ours: span([10, 20].map((start_C) => (1000 * ice_kg([cod(start_C)])) / 5 / start_C)),
    },
    {
      name: "ice at −18 °C against 0 °C takes up more heat by",
      unit: "%",
      source: "handbook-ice",
      mark: "C",
      published: [9, 13],
      ours: span(
        (["thin", "thick"] as const).map((build) => 100 * (taken_kJ(-18, build) / taken_kJ(0, build) - 1)),
      ),
    },
  ];
}
