import { bandOf } from "../ensemble/quantiles.ts";
import type { Draws } from "../ensemble/types.ts";
import type { Band } from "../forecast/result.ts";
import type { SayingResult } from "./types.ts";

/** From and to of what a saying claims; infinite where it names no end. */
export type Claim = readonly [low: number, high: number];

/** What came out, in words that carry the band, and whether it is what the saying claims. */
export type Finding = Pick<SayingResult, "found" | "agrees">;

/**
 * Whether a band is what a saying claims: all of it (yes), none of it (no), its middle and some more (in part); else the
 * middle is not but an end may be, and nobody can tell.
 */
export function agreement({ p10, p50, p90 }: Band, [low, high]: Claim): SayingResult["agrees"] {
  if (p10 === null || p50 === null || p90 === null) return "cannot tell";
  const within = (value: number): boolean => value >= low && value <= high;
  if (within(p10) && within(p90)) return "yes";
  if (p90 < low || p10 > high) return "no";
  return within(p50) ? "in part" : "cannot tell";
}

const untold = "this trip cannot tell";

function banded({ p10, p50, p90 }: Band, say: (value: number) => string): string | null {
  if (p10 === null || p50 === null || p90 === null) return null;
  const [low, middle, high] = [say(p10), say(p50), say(p90)];
  return low === high ? middle : `${middle}, ${low} to ${high}`;
}

/** How many times as long ice lasts one way as the other, by member. */
export function ice_ratio(one: Draws, other: Draws, cooler: number): number[] {
  const [a, b] = [one.coolers[cooler].iceCarriedOn_h, other.coolers[cooler].iceCarriedOn_h];
  return Array.from(a, (hours, m) => (b[m] > 0 ? hours / b[m] : Number.NaN));
}

export function ratioFinding(ice_ratio: readonly number[], claim_ratio: Claim): Finding {
  const band = bandOf(ice_ratio);
  const words = banded(band, (value) => value.toFixed(2));
  const found = words === null ? untold : `ice lasts ${words} times as long`;
  return { found, agrees: agreement(band, claim_ratio) };
}

const signed = (hours: number): string => {
  const whole = Math.round(hours);
  return whole > 0 ? `+${whole}` : whole < 0 ? `−${-whole}` : "0";
};

export function hoursFinding(gain_h: readonly number[], claim_h: Claim): Finding {
  const band = bandOf(gain_h);
  const words = banded(band, signed);
  const found = words === null ? untold : `hours of ice: ${words}`;
  return { found, agrees: agreement(band, claim_h) };
}
