import { bodyOf } from "../../core/cooler/builds.ts";
import type { FoodLot } from "../../core/cooler/types.ts";
import { textbookClosures } from "../source/textbookBox.ts";
import { cooledAfter_s, iceLot, packAndRun, stillRoom } from "./lab.ts";
import { type Sample, span } from "./sample.ts";

const k_W_per_mK = 0.5;
const heat_J_per_m3K = 3.6e6;

/** First term of Fourier's series for a surface held at 0 °C: middle/start = factor · exp(−root² · αt/r²). */
const series = {
  slab: { factor: 4 / Math.PI, rootSquared: Math.PI ** 2 / 4 },
  cylinder: { factor: 1.602, rootSquared: 5.783 },
  lump: { factor: 2, rootSquared: Math.PI ** 2 },
} as const;

/** Time for the middle to come from 20 to 5 °C, ours / the series'. Nothing melts or freezes in it. */
function middle_frac(shape: FoodLot["shape"], thick_m: number): number {
  const lot: FoodLot = {
    kind: "food",
    id: "piece",
    mass_kg: 1,
    pieces: 1,
    start_C: 20,
    curve: { t_C: Float64Array.of(-40, 80), h_J_per_kg: Float64Array.of(-40 * 3600, 80 * 3600) },
    density_kg_per_m3: heat_J_per_m3K / 3600,
    k_W_per_mK,
    kFrozen_W_per_mK: k_W_per_mK,
    thick_m,
    shape,
    layer: null,
    depth: 1,
  };
  const fleet = packAndRun({
    body: bodyOf("thick", 0.047, 0.25),
    around: stillRoom(10),
    lots: [iceLot({ mass_kg: 20, liquid_frac: 0.55 }), lot],
    start_C: 0,
    end_s: 24 * 3600,
    closures: textbookClosures,
  });
  const { factor, rootSquared } = series[shape];
  const exact_s =
    (Math.log((factor * 20) / 5) / rootSquared) * (thick_m / 2) ** 2 * (heat_J_per_m3K / k_W_per_mK);
  return cooledAfter_s(fleet, "piece", 5) / exact_s;
}

/** How long the middle of a solid piece lags behind ice that touches it everywhere, against heat conduction itself. */
export function solidFoodSamples(): Sample[] {
  const law = { unit: "", source: "derivation", mark: "C", published: [0.85, 1.15] } as const;
  return [
    {
      name: "middle of a 60 mm slab to 5 °C, time / Fourier's series",
      ...law,
      ours: span([middle_frac("slab", 0.06)]),
    },
    {
      name: "… of a 60 mm cylinder",
      ...law,
      ours: span([middle_frac("cylinder", 0.06)]),
    },
    {
      name: "… of a 100 mm lump (sphere)",
      ...law,
      ours: span([middle_frac("lump", 0.1)]),
    },
  ];
}
