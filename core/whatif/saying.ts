import type { Trip } from "../trip/types.ts";
import { isMade, mainCoolerIndex, type Unmade } from "./change.ts";
import type { Drawn } from "./gains.ts";
import { type Claim, type Finding, ice_ratio, ratioFinding } from "./sayingWords.ts";

/** The two ways of doing it that a saying sets against each other. */
export interface Sides {
  one: Trip;
  other: Trip;
  tried: string;
}

/** A thing that people say, and how it is tried on a trip. */
export interface Saying {
  key: string;
  saying: string;
  claims: string;
  source: string;
  sides(trip: Trip): Sides | Unmade;
  find(written: Drawn, one: Drawn, other: Drawn): Finding;
}

/** Finds how many times as long ice lasts, in the trip's main cooler. */
export function ratioWithin(claim_ratio: Claim): Saying["find"] {
  return ({ trip }, one, other) =>
    ratioFinding(ice_ratio(one.draws, other.draws, mainCoolerIndex(trip)), claim_ratio);
}

/** Both sides, unless one of them cannot be; the reason then stands for the saying. */
export function sidesOf(one: Trip | Unmade, other: Trip | Unmade, tried: string): Sides | Unmade {
  if (!isMade(one)) return one;
  return isMade(other) ? { one, other, tried } : other;
}

/** Upper end of a claim that names none. */
export const noEnd_ratio: number = Number.POSITIVE_INFINITY;
