import { bodyOf } from "../../../core/cooler/builds.ts";
import { cooledAfter_s, foodLot, iceLot, packAndRun, stillRoom } from "../lab.ts";
import { cubes, food_h, ice, no, type Saying } from "./saying.ts";

/** Hours in which a kilogram of chili comes down from 20 to 5 °C in the middle, among cubes. */
function cooled_h(shape: "lump" | "slab", thick_m: number): number {
  const chili = foodLot("chili", { mass_kg: 1, start_C: 20, shape, thick_m });
  const bench = { body: bodyOf("standard", 0.047, 0.25), around: stillRoom(25), start_C: 6, end_s: 86_400 };
  return cooledAfter_s(packAndRun({ ...bench, lots: [iceLot({ mass_kg: 14 }), chili] }), "chili", 5) / 3600;
}

export function packingSayings(): Saying[] {
  const layered = ice(
    { form: "block", amount: "6 kg", at: "-2 C", in: "galley" },
    { form: "cube", amount: "6 kg", at: "-2 C", in: "galley" },
    { form: "gel pack", amount: "2 kg", at: "-16 C", in: "galley" },
  );
  const all = (layer: "base" | "top") => cubes("14 kg", { layer });
  return [
    {
      says: "block at the base, ice between, packs on top",
      asked: "food hours, layered / all cubes at the base",
      claim: [1.05, no],
      ours: food_h(layered) / food_h(all("base")),
      unit: "×",
    },
    {
      says: "…",
      asked: "food hours, layered / all cubes on top",
      claim: [1.05, no],
      ours: food_h(layered) / food_h(all("top")),
      unit: "×",
    },
    {
      says: "food flat freezes better (here: cools in the ice)",
      asked: "hours from 20 to 5 °C, 100 mm lump / 25 mm flat bag",
      claim: [1.05, no],
      ours: cooled_h("lump", 0.1) / cooled_h("slab", 0.025),
      unit: "×",
    },
  ];
}
