import { bodyOf } from "../../core/cooler/builds.ts";
import { foodLot, foodOver_s, iceLot, packAndRun, stillRoom } from "./lab.ts";
import { type Sample, span } from "./sample.ts";

const fridgeLimit_C = 40 / 1.8 - 32 / 1.8;
const freezer_m3 = 18 * 0.3048 ** 3;

function cabinet(volume_m3: number, wall_m: number) {
  const body = bodyOf("thick", volume_m3, 0.25);
  for (const zone of ["lid", "sides", "base"] as const) body[zone] = { ...body[zone], thickness_m: wall_m };
  return { ...body, emptyWeight_kg: 60 };
}

/** Hours until the first frozen food of an 18 ft³ freezer without power rises above `limit_C`. */
function frozen_h(food_kg: number, wall_m: number, limit_C: number): number {
  const lots = ["ground beef", "frozen vegetables"].map((key) =>
    foodLot(key, { mass_kg: food_kg / 2, start_C: -18, thick_m: 0.05, pieces: 100 }),
  );
  const body = cabinet(freezer_m3, wall_m);
  const fleet = packAndRun({ body, around: stillRoom(22), lots, start_C: -15, end_s: 20 * 86_400 });
  return foodOver_s(fleet, limit_C) / 3600;
}

/** Hours until the dry ice of a freezer with frozen food in it is used up. */
function dryIce_h(wall_m: number): number {
  const lots = [
    foodLot("ground beef", { mass_kg: 70, start_C: -18, thick_m: 0.05, pieces: 100 }),
    iceLot({ form: "dry ice", mass_kg: 22.7, start_C: -78.5 }),
  ];
  const body = cabinet(freezer_m3, wall_m);
  const fleet = packAndRun({ body, around: stillRoom(22), lots, start_C: -15, end_s: 4 * 86_400 });
  const { t_s, dryIce_kg } = fleet.tracks[0]!;
  return t_s[dryIce_kg.findIndex((kg) => kg < 0.2)]! / 3600;
}

/** Hours until the first food of a closed refrigerator without power is above 40 °F. */
function refrigerator_h(food_kg: number, start_C: number): number {
  const lots = ["milk", "ham"].map((key) => foodLot(key, { mass_kg: food_kg / 2, start_C }));
  const body = cabinet(0.3, 0.03);
  return (
    foodOver_s(packAndRun({ body, around: stillRoom(22), lots, start_C, end_s: 86_400 }), fridgeLimit_C, 60) /
    3600
  );
}

/**
 * The consumer rules for a power cut, as orders of magnitude. 'Holds its temperature' is read as anything from the first item
 * above −5 °C to the first above 0 °C; a full freezer holds 250 kg, half full 125 kg; walls 50–70 mm.
 */
export function freezerSamples(): Sample[] {
  const walls = [0.05, 0.07];
  const held = (kg: number) =>
    span(walls.flatMap((wall_m) => [-5, 0].map((limit_C) => frozen_h(kg, wall_m, limit_C))));
  const rule = { unit: "h", source: "fsis-food-safety", mark: "Q" } as const;
  return [
    { name: "full freezer without power", ...rule, published: [24, 96], ours: held(250) },
    { name: "half-full freezer", ...rule, published: [12, 48], ours: held(125) },
    {
      name: "… full / half full",
      ...rule,
      unit: "",
      published: [1.6, 2.4],
      ours: span(walls.map((wall_m) => frozen_h(250, wall_m, 0) / frozen_h(125, wall_m, 0))),
    },
    { name: "50 lb of dry ice in 18 ft³", ...rule, published: [24, 96], ours: span(walls.map(dryIce_h)) },
    {
      name: "closed refrigerator without power",
      ...rule,
      published: [2, 8],
      ours: span([10, 40].flatMap((kg) => [2, 3].map((start_C) => refrigerator_h(kg, start_C)))),
    },
  ];
}
