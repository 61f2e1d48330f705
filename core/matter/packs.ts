import type { EnthalpyCurve } from "./curve.ts";

/** A sealed cold pack by the kilogram of its filling; no size, no skin. */
export interface Pack {
  readonly says: string;
  /** Where the filling is wholly molten. */
  readonly melts_C: number;
  readonly curve: EnthalpyCurve;
  readonly density_kg_per_m3: number;
  readonly kFrozen_W_per_mK: number;
  readonly kMelted_W_per_mK: number;
  readonly source: string;
}

interface Filling {
  readonly from_C: number;
  readonly to_C: number;
  readonly latent_J_per_kg: number;
  readonly frozen_J_per_kgK: number;
  readonly melted_J_per_kgK: number;
}

/**
 * Cold packs. The gel is water with a few per cent of thickener: it melts at 0 °C with a little less heat than ice. The
 * eutectic is potassium chloride in water, 19.5 % by mass, melting at −10.7 °C; a home freezer at −18 °C can freeze it.
 * A pack with another salt melts elsewhere (sodium chloride near −21 °C): its label rules.
 *
 * @source from-memory
 */
export const packs: Readonly<Record<"gel pack" | "eutectic pack", Pack>> = {
  "gel pack": {
    says: "water gel, melts at 0 °C",
    melts_C: 0,
    curve: meltingCurve({
      from_C: -0.5,
      to_C: 0,
      latent_J_per_kg: 315_000,
      frozen_J_per_kgK: 2050,
      melted_J_per_kgK: 4050,
    }),
    density_kg_per_m3: 1010,
    kFrozen_W_per_mK: 2.1,
    kMelted_W_per_mK: 0.56,
    source: "from-memory",
  },
  "eutectic pack": {
    says: "potassium chloride brine, melts at −10.7 °C",
    melts_C: -10.7,
    curve: meltingCurve({
      from_C: -10.7,
      to_C: -10.7,
      latent_J_per_kg: 283_000,
      frozen_J_per_kgK: 1850,
      melted_J_per_kgK: 3300,
    }),
    density_kg_per_m3: 1130,
    kFrozen_W_per_mK: 2,
    kMelted_W_per_mK: 0.55,
    source: "from-memory",
  },
};

/** −80…80 °C, 0 for the molten filling at 0 °C. */
function meltingCurve(filling: Filling): EnthalpyCurve {
  const molten = filling.melted_J_per_kgK * filling.to_C;
  const solid = molten - filling.latent_J_per_kg;
  const coldest = solid + filling.frozen_J_per_kgK * (-80 - filling.from_C);
  return {
    t_C: Float64Array.of(-80, filling.from_C, filling.to_C, 80),
    h_J_per_kg: Float64Array.of(coldest, solid, molten, filling.melted_J_per_kgK * 80),
  };
}
