import type { Surroundings } from "../sky/types.ts";
import { makeOutside, type Outside } from "./outside.ts";
import type { CoolerInput, FleetInput } from "./types.ts";

/** A moment at which something in one box's outside or habit is not smooth: no step goes past it. */
export interface Break {
  t_s: number;
  /** By habit or act the lid changes there, so the flows jump whatever the outside does. */
  lid: boolean;
}

/** All breaks of one box within the trip, in order. */
export function breaksOf(cooler: CoolerInput, index: number, input: FleetInput): Break[] {
  const lid = new Set<number>();
  if (cooler.sealedUntil_s !== null) lid.add(cooler.sealedUntil_s);
  for (const [from_s, to_s] of cooler.openings?.spans_s ?? []) lid.add(from_s).add(to_s);
  for (const act of input.acts) if (act.do === "open" && act.cooler === index) lid.add(act.t_s + act.for_s);
  const all = new Set<number>([...cooler.around.breaks_s, ...lid]);
  return [...all]
    .filter((t_s) => t_s > 0 && t_s < input.end_s)
    .sort((a, b) => a - b)
    .map((t_s) => ({ t_s, lid: lid.has(t_s) }));
}

/** Jumps of the outside that a step may take in its stride; what they bend shows in its error. */
const small = {
  rise_K: 0.25,
  sun_W_per_m2: 5,
  wind_m_per_s: 0.2,
  humidity_kg_per_kg: 3e-4,
  resistance_frac: 0.02,
};

const after: Surroundings = makeOutside().around;

/**
 * Whether the outside jumps at `t_s`, and does not only bend there, as it does at sunrise.
 *
 * @param before as the last step saw it, just before
 */
export function outsideJumps(cooler: CoolerInput, t_s: number, { around: before }: Outside): boolean {
  const now = cooler.around.at(t_s, after);
  const far = (a: number, b: number, allowed: number): boolean => Math.abs(a - b) > allowed;
  return (
    far(now.air_C, before.air_C, small.rise_K) ||
    far(now.lidRadiant_C, before.lidRadiant_C, small.rise_K) ||
    far(now.sideRadiant_C, before.sideRadiant_C, small.rise_K) ||
    far(now.ground_C, before.ground_C, small.rise_K) ||
    far(now.lidSun_W_per_m2, before.lidSun_W_per_m2, small.sun_W_per_m2) ||
    far(now.sideSun_W_per_m2, before.sideSun_W_per_m2, small.sun_W_per_m2) ||
    far(now.wind_m_per_s, before.wind_m_per_s, small.wind_m_per_s) ||
    far(now.humidity_kg_per_kg, before.humidity_kg_per_kg, small.humidity_kg_per_kg) ||
    far(now.groundResistance_m2K_per_W / before.groundResistance_m2K_per_W, 1, small.resistance_frac)
  );
}
