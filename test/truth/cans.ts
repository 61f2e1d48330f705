import { bodyOf } from "../../core/cooler/builds.ts";
import { cooledAfter_s, foodLot, iceLot, packAndRun, stillRoom } from "./lab.ts";
import { type Sample, span } from "./sample.ts";

const can_kg = 0.342;

interface Bath {
  cans: number;
  from_C: number;
  to_C: number;
  ice: "ice alone" | "ice-water" | "snow";
  each_kg?: number;
  thick_m?: number;
}

/** Minutes until the warmest point of drinks in a chest full of ice has come down to `to_C`. */
function cooling_min({ cans, from_C, to_C, ice, each_kg = can_kg, thick_m = 0.066 }: Bath): number {
  const drink = foodLot("soft drink", {
    id: "cans",
    mass_kg: cans * each_kg,
    pieces: cans,
    start_C: from_C,
    thick_m,
    shape: "cylinder",
  });
  const form = ice === "snow" ? "crushed" : "cube";
  // As much water as covers the lot: 55 % of the mass with a full chest of cubes.
  const bed = iceLot({ form, mass_kg: 20, liquid_frac: ice === "ice-water" ? 0.55 : 0 });
  const fleet = packAndRun({
    body: bodyOf("standard", 0.05, 0.25),
    around: stillRoom(22),
    start_C: 5,
    lots: [bed, drink],
    drain: ice === "ice-water" ? "keep" : "open",
    end_s: 12 * 3600,
  });
  return cooledAfter_s(fleet, "cans", to_C) / 60;
}

/** Six cans and twenty-four, from a cool and a warm room: what the publications leave open. */
const loads = [6, 24].flatMap((cans) => [18, 25].map((from_C) => ({ cans, from_C })));

function measuredDrink(to_C: number, ice: Bath["ice"], each: Partial<Bath> = {}): readonly [number, number] {
  return span([18, 22, 25].map((from_C) => cooling_min({ cans: 1, from_C, to_C, ice, ...each })));
}

/** Drinks in ice. Three measured times leave the starting temperature open: a room of 18–25 °C is taken. */
export function canSamples(): Sample[] {
  const stirred =
    "a can in ice-water stirs, and so does the water around it; the model's pool is one coefficient for all that lies in it";
  const ratios = loads.map(
    (load) =>
      cooling_min({ ...load, to_C: 5, ice: "ice alone" }) /
      cooling_min({ ...load, to_C: 5, ice: "ice-water" }),
  );
  return [
    {
      name: "cans to 5 °C: time in ice alone / in ice-water",
      unit: "",
      source: "drinks-in-ice-figures",
      mark: "Q",
      published: [1.3, 2.7],
      ours: span(ratios),
    },
    {
      name: "0.33 L can in ice-water, to 9 °C",
      unit: "min",
      source: "sintef-2023",
      mark: "R",
      published: [4, 6],
      ours: measuredDrink(9, "ice-water", { each_kg: 0.335 }),
      miss: { gap_frac: 0.45, why: stirred },
    },
    {
      name: "0.33 L can in ice-water, to 5 °C",
      unit: "min",
      source: "sintef-2023",
      mark: "R",
      published: [8, 12],
      ours: measuredDrink(5, "ice-water", { each_kg: 0.335 }),
      miss: { gap_frac: 0.25, why: stirred },
    },
    {
      name: "0.33 L can in snow, to 5 °C",
      unit: "min",
      source: "sintef-2023",
      mark: "R",
      published: [24, 36],
      ours: measuredDrink(5, "snow", { each_kg: 0.335 }),
    },
    {
      name: "1.5 L bottle in snow, to 5 °C (read as the same end)",
      unit: "min",
      source: "sintef-2023",
      mark: "R",
      published: [36, 54],
      ours: measuredDrink(5, "snow", { each_kg: 1.52, thick_m: 0.09 }),
    },
  ];
}
