import { type Closures, medianClosures } from "../../core/cooler/closures.ts";
import { runFleet, startFleet } from "../../core/cooler/fleet.ts";
import type { Fleet } from "../../core/cooler/fleetState.ts";
import type { Around, CoolerBody, IceLot } from "../../core/cooler/types.ts";
import { buildWalls, type Walls } from "../../core/cooler/walls.ts";

/**
 * The box of a textbook: ice in perfect contact with every inside face, no radiation outside, no thinning of the stated
 * wall. Films inside are so large that they take less than 0.01 % of the difference.
 */
export const textbookClosures: Readonly<Closures> = {
  ...medianClosures,
  thickness_frac: 1,
  outsideEmittance_frac: 0,
  wallLot_W_per_m2K: 1e5,
  wallPool_W_per_m2K: 1e5,
  lotPool_W_per_m2K: 1e5,
  contact_W_per_m2K: 1e5,
  headWall_W_per_m2K: 1e5,
  headLid_W_per_m2K: 1e5,
  headTop_W_per_m2K: 1e5,
  insideRadiation_W_per_m2K: 1e5,
  sinkingAir_W_per_m2K: 1e5,
};

/** Constant surroundings without sun, radiation or moisture; air, shell and ground as the problem says. */
export function constantAround(
  air_C: number,
  film_W_per_m2K: number,
  groundResistance_m2K_per_W: number,
): Around {
  return {
    stays: [],
    breaks_s: [],
    at: (_t_s, out) =>
      Object.assign(out, {
        air_C,
        humidity_kg_per_kg: 0,
        pressure_Pa: 101_325,
        // The film law is 2.8 + 3.0 v: this is the wind that makes the problem's film.
        wind_m_per_s: (film_W_per_m2K - 2.8) / 3,
        lidSun_W_per_m2: 0,
        sideSun_W_per_m2: 0,
        lidRadiant_C: air_C,
        sideRadiant_C: air_C,
        ground_C: air_C,
        groundResistance_m2K_per_W,
      }),
  };
}

/**
 * A body whose conductance, read off its walls by `conductanceOf`, is the problem's: the books reckon k·A/t without edges
 * and corners, so the walls are scaled until theirs is met. The hollow wall is taken since its conductance does not
 * change with temperature, as in the books. It weighs 1 kg and its shell stands outside the insulation.
 */
export function bodyOfConductance(
  inside: CoolerBody["inside"],
  thickness_m: number,
  base_m: number,
  wanted_W_per_K: number,
  conductanceOf: (walls: Walls) => number,
): CoolerBody {
  const zone = (t_m: number) => ({ thickness_m: t_m, insulation: "air" as const });
  const bare = { inside, lid: zone(thickness_m), sides: zone(thickness_m), base: zone(base_m) };
  const joint = { emptyWeight_kg: 1, seal_W_per_mK: 0, leak_per_h: 0, absorptance_frac: 0 };
  const plain: CoolerBody = { ...bare, ...joint, measured_W_per_K: null };
  const area_m2 = buildWalls(plain, textbookClosures).outside_m2.reduce((a, b) => a + b, 0);
  let low = 1e-3;
  // A stated conductance has the film of a still room in it, about 8 W/m²K: more than that no wall can have.
  let high = 8 * area_m2;
  for (let n = 0; n < 60; n++) {
    const measured_W_per_K = Math.sqrt(low * high);
    const ours = conductanceOf(buildWalls({ ...plain, measured_W_per_K }, textbookClosures));
    if (ours < wanted_W_per_K) low = measured_W_per_K;
    else high = measured_W_per_K;
  }
  return { ...plain, measured_W_per_K: Math.sqrt(low * high) };
}

/** Melts ice at 0 °C in the body, its walls at 0 °C to begin with. */
export function meltIn(
  body: CoolerBody,
  around: Around,
  ice_kg: number,
  end_s: number,
  closures: Closures = textbookClosures,
): Fleet {
  const ice: IceLot = {
    kind: "ice",
    id: "ice",
    form: "block",
    mass_kg: ice_kg,
    pieces: 1,
    start_C: 0,
    liquid_frac: 0,
    layer: null,
  };
  const cooler = {
    name: "textbook box",
    body,
    start: { kind: "uniform", body_C: 0 } as const,
    cover: "none" as const,
    top: "none" as const,
    drain: "keep" as const,
    openings: null,
    sealedUntil_s: null,
    around,
    lots: [ice],
  };
  const fleet = startFleet({ end_s, coolers: [cooler], acts: [] }, { closures });
  runFleet(fleet, end_s);
  return fleet;
}

/** Ice melted by the end of the run, kg. */
export function melted_kg(fleet: Fleet): number {
  const ice = fleet.tracks[0]!.ice_kg;
  return ice[0]! - ice.at(-1)!;
}
