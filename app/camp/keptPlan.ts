import type { PlanResult } from "../../core/index.ts";
import { keepSetting, setting } from "../offline/store.ts";
import type { PlanView } from "../worker/asks.ts";

/** What Camp needs of a plan, so that a phone that was switched off in between need not plan again. */
export interface CampPlan {
  /** The trip file that it was made from. */
  text: string;
  /** The same with everything planned written into it: what a log is reckoned from. */
  file: string;
  pull: PlanResult["pull"];
  iceRuns: PlanResult["iceRuns"];
  merges: { at: string; from: string; into: string; why: string }[];
  food: {
    name: string;
    cooler: string;
    eaten_h: number | null;
    verdict: string;
    rule: string;
    why: string;
  }[];
  coolers: {
    name: string;
    t_h: number[];
    air_C: number[];
    ice_kg: { p10: number[]; p50: number[]; p90: number[] };
  }[];
}

const nameOf = (trip: string): string => `camp plan ${trip}`;
const rounded = (values: readonly number[]): number[] => values.map((value) => Math.round(value * 100) / 100);

/** What Camp needs, out of a plan; null where nothing was planned. */
export function campPlan(text: string, { result, file }: PlanView): CampPlan | null {
  const { plan, food, coolers } = result;
  if (plan === undefined) return null;
  return {
    text,
    file,
    pull: plan.pull,
    iceRuns: plan.iceRuns,
    merges: plan.merges.map(({ at, from, into, why }) => ({ at, from, into, why })),
    food: food.map(({ name, cooler, eaten_h, verdict, rule, why }) => ({
      name,
      cooler,
      eaten_h,
      verdict,
      rule,
      why,
    })),
    coolers: coolers.map(({ name, series: { t_h, air_C, ice_kg } }) => ({
      name,
      t_h: rounded(t_h),
      air_C: rounded(air_C.p50),
      ice_kg: { p10: rounded(ice_kg.p10), p50: rounded(ice_kg.p50), p90: rounded(ice_kg.p90) },
    })),
  };
}

/** Keeps it; a device that keeps nothing has said so elsewhere. */
export async function keepPlan(trip: string, text: string, view: PlanView): Promise<void> {
  await keepSetting(nameOf(trip), JSON.stringify(campPlan(text, view))).catch(() => {});
}

/** null: none was made on this device. */
export async function keptPlan(trip: string): Promise<CampPlan | null> {
  const kept = await setting(nameOf(trip)).catch(() => undefined);
  const plan = kept === undefined ? null : (JSON.parse(kept) as CampPlan | null);
  // One that an older version kept has no file to reckon from: it is made anew.
  return plan?.file === undefined ? null : plan;
}

/** Place in the series at or before so many hours after departure. */
export function placeAt(t_h: readonly number[], at_h: number): number {
  const after = t_h.findIndex((one) => one > at_h);
  return after < 0 ? t_h.length - 1 : Math.max(0, after - 1);
}
