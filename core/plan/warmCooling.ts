import type { Band } from "../forecast/result.ts";
import { coolingTime_s } from "../heat/coolingTime.ts";
import { foodDensity_kg_per_m3 } from "../matter/foodProperties.ts";
import type { TripWarmLoad } from "../trip/types.ts";

/** Bags of boned meat, as one packs them: thin enough to cool, thick enough to fill. An engineering judgement. */
const BAG_m = { thin: 0.05, usual: 0.065, thick: 0.08 };
/** A stated or usual thickness may be off by so much. */
const THICKNESS_FRAC = 0.15;
/** Bagged meat against drained ice: wet contact here, an air gap there. An engineering judgement. */
const FILM_W_per_m2K = { slow: 15, usual: 30, fast: 60 };
/** Drained ice with air between. */
const BATH_C = 1;
/** Big pieces leave this share of their room empty. */
const PACKED_FRAC = 0.7;
const hour_s = 3600;

/** How the load is made up when it goes in: as it is with its bone, else in bags. */
export function piecesOf(load: TripWarmLoad): Pick<TripWarmLoad, "thick_m" | "shape"> {
  if (load.boneIn) return { thick_m: load.thick_m, shape: load.shape === "lump" ? "lump" : "cylinder" };
  return load.thick_m <= BAG_m.thick
    ? { thick_m: load.thick_m, shape: load.shape }
    : { thick_m: BAG_m.usual, shape: "slab" };
}

/**
 * Hours until the middle of the load is down at the limit, lying in drained ice: slow and fast by thickness and by how
 * well the ice touches it. A bone-in piece cools as one thick cylinder, boned meat in flat bags. The pieces do not touch
 * each other, and the ice lasts.
 */
export function centreCold_h(load: TripWarmLoad, limit_C: number): Band {
  const { thick_m, shape } = piecesOf(load);
  const isBagged = !load.boneIn && load.thick_m > BAG_m.thick;
  const thin_m = isBagged ? BAG_m.thin : thick_m * (1 - THICKNESS_FRAC);
  const thick = isBagged ? BAG_m.thick : thick_m * (1 + THICKNESS_FRAC);
  const at = (size_m: number, film_W_per_m2K: number): number | null => {
    const piece = { food: load.like, thick_m: size_m, shape };
    const time_s = coolingTime_s(piece, load.start_C, { t_C: BATH_C, film_W_per_m2K }, limit_C);
    return time_s === null ? null : time_s / hour_s;
  };
  return {
    p10: at(thin_m, FILM_W_per_m2K.fast),
    p50: at(thick_m, FILM_W_per_m2K.usual),
    p90: at(thick, FILM_W_per_m2K.slow),
  };
}

/** Room that the load takes, gaps between its pieces included. */
export function loadRoom_L(load: TripWarmLoad): number {
  return (1000 * load.mass_kg) / foodDensity_kg_per_m3(load.like, 5) / PACKED_FRAC;
}

/** How to lay it, in the order in which one does it; common practice. */
export function layingWords(load: TripWarmLoad, carcassRule: string | null): string[] {
  const cut = load.boneIn
    ? "Leave the bone in only if you must: the meat at bone and joint cools last. Put the thermometer there."
    : "Bone it out and split it into flat bags of 50–80 mm (2–3 in); one thick heap cools like one thick piece.";
  const rule =
    carcassRule === null
      ? "Ask the agency first: tags, proof of sex and which parts must leave with you differ by place."
      : `Rule as stated in your file: ${carcassRule}. The order posted on the day comes before it.`;
  return [
    "Gut or field-dress it at once, keep it clean and dry, and let it cool in shade and moving air while the cooler is made ready.",
    cut,
    "Bag it, so that no juice gets out and no water gets in: it never lies in water.",
    "Lowest in the cooler and in the ice, not on top of other food: ice below, between and on top; no piece against another, and a gap for air at the sides.",
    "Drain open: let the meltwater run off as it comes, away from camp.",
    "Lid shut. Turn the pieces and fill up the gaps once, after half the cooling time.",
    "A cooler of its own, or all other food above it in sealed boxes: it is raw.",
    rule,
  ];
}
