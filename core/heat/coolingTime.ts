import type { Food } from "../matter/food.ts";
import {
  foodConductivity_W_per_mK,
  foodCurve,
  foodDensity_kg_per_m3,
  foodSpread_W_per_mK,
} from "../matter/foodProperties.ts";
import { type Bath, type BodyShape, centreTime_s, type SolidBody } from "./conduction.ts";

/**
 * A piece of a food as a body that heat goes through. A drink that is not frozen stirs itself.
 *
 * @param thick_m 0.001…1, thickness of a slab, else diameter
 * @source choi-okos-1986, engineering-judgement
 */
export function foodBody(food: Food, thick_m: number, shape: BodyShape): SolidBody {
  const curve = foodCurve(food);
  const freezes_C = food.freezes_C ?? Number.NEGATIVE_INFINITY;
  // On the plateau of pure water the lower node is ice, the upper one water.
  const k_W_per_mK = curve.t_C.map((t_C, i) =>
    t_C <= freezes_C && !(t_C === freezes_C && curve.t_C[i - 1] === freezes_C)
      ? foodConductivity_W_per_mK(food, t_C === freezes_C && freezes_C === 0 ? -1e-3 : t_C)
      : foodSpread_W_per_mK(food, t_C),
  );
  return { shape, thick_m, density_kg_per_m3: foodDensity_kg_per_m3(food, 5), curve, k_W_per_mK };
}

/**
 * Time in which the middle of a warm piece of food comes down to `to_C`, in air or ice water of one temperature. The
 * whole piece gives off heat; pieces that touch take longer. Bone, hide and wrapping must be in the film.
 *
 * @param from_C −80…80, the whole piece
 * @returns seconds; null where the bath is not colder than `to_C`, or after 60 days
 * @source derivation, choi-okos-1986
 */
export function coolingTime_s(
  piece: { food: Food; thick_m: number; shape: BodyShape },
  from_C: number,
  bath: Bath,
  to_C: number,
): number | null {
  return centreTime_s(foodBody(piece.food, piece.thick_m, piece.shape), from_C, bath, to_C);
}
