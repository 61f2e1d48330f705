import { max, min } from "d3-array";
import type { Band } from "../forecast/result.ts";
import { massWords } from "../quantity/show.ts";
import type { UnitSystem } from "../quantity/units.ts";
import type { Gain } from "../whatif/types.ts";
import { isPoint } from "./words.ts";

/** Said of a change that a person on the trip could not tell from none. */
export const NOTHING = "nothing you would notice";

/** Below these a change is lost among the others of a day. */
const LEAST_h = 1;
const LEAST_kg = 0.25;
/** Hours of all perishables together add up sooner. */
const LEAST_warm_h = 3;

const ends = ({ p10, p50, p90 }: Band): number[] => [p10, p50, p90].filter((end) => end !== null);

/** True where both ends of a band are known and nobody would notice them. */
function isNothing(band: Band, least: number): boolean {
  const known = ends(band);
  return known.length === 3 && known.every((end) => Math.abs(end) < least);
}

/** True where neither the food nor the ice changes by what somebody would notice. */
export function makesNoDifference(gain: Gain): boolean {
  return (
    [gain.food_h, gain.ice_h].every((band) => isNothing(band, LEAST_h)) &&
    isNothing(gain.warm_h, LEAST_warm_h) &&
    isNothing(gain.ice_kg, LEAST_kg)
  );
}

/** "+14 h", "−3 h", "0 h": whole hours. */
function signedHours(hours: number): string {
  return `${signed(Math.round(hours))} h`;
}

function signed(whole: number): string {
  return whole > 0 ? `+${whole}` : whole < 0 ? `−${-whole}` : "0";
}

/**
 * A change in hours as a likely value with its range: "+14 h, 6 to 25", "−3 h, −8 to +2", "nothing you would notice".
 * A range with one sign is told without it where hours are gained. An end that the trip does not reach is said to be so.
 */
export function gainHours(band: Band): string {
  if (isNothing(band, LEAST_h)) return NOTHING;
  const known = ends(band);
  if (known.length === 0) return "cannot be told on this trip";
  const isGain = min(known)! >= 0;
  const end = (hours: number | null): string => {
    if (hours === null) return "more than this trip shows";
    const whole = Math.round(hours);
    return isGain ? String(whole) : signed(whole);
  };
  const range = `${end(band.p10)} to ${end(band.p90)}`;
  if (band.p50 === null) return `more than this trip shows, ${range}`;
  if (isPoint(band)) return signedHours(band.p50);
  if (end(band.p10) === end(band.p90)) return `${signedHours(band.p50)}, hardly any range`;
  if (Math.abs(band.p50) < LEAST_h) return `likely nothing, could be ${range} h`;
  return `${signedHours(band.p50)}, ${range}`;
}

/** The same of a mass of ice: "+2.1 lb, 0.9 to 3.4 lb". */
export function gainIce(band: Band, units: UnitSystem): string {
  if (isNothing(band, LEAST_kg)) return NOTHING;
  if (band.p10 === null || band.p50 === null || band.p90 === null) return "cannot be told on this trip";
  const mass = (kg: number): string => {
    const words = massWords(Math.abs(kg), units);
    return Number.parseFloat(words) === 0 ? words : `${kg > 0 ? "+" : "−"}${words}`;
  };
  return isPoint(band) ? mass(band.p50) : `${mass(band.p50)}, ${mass(band.p10)} to ${mass(band.p90)}`;
}

/** One gain in words, cold food first, then ice: what nobody would notice is left out where something else is told. */
export function gainWords(gain: Gain, units: UnitSystem): string {
  if (makesNoDifference(gain)) return NOTHING;
  const parts = [`food ${gainHours(gain.food_h)}`];
  if (!isNothing(gain.warm_h, LEAST_warm_h)) parts.push(`hours over the limit ${fewerHours(gain.warm_h)}`);
  parts.push(`ice ${gainHours(gain.ice_h)}`);
  if (!isNothing(gain.ice_kg, LEAST_kg)) parts.push(`ice left ${gainIce(gain.ice_kg, units)}`);
  return parts.join("; ");
}

/** Fewer hours are a gain, so what is told has its sign turned: "−4 h, −9 to −1". */
function fewerHours({ p10, p50, p90 }: Band): string {
  const turned = (hours: number | null): number | null => (hours === null ? null : -hours);
  return gainHours({ p10: turned(p90), p50: turned(p50), p90: turned(p10) });
}

/** Both ends of all bands given, for a scale; never without zero. */
export function extentOf_h(bands: readonly Band[]): [number, number] {
  const known = bands.flatMap(ends);
  return [Math.min(0, min(known) ?? 0), Math.max(0, max(known) ?? 0)];
}

/** "7 in 100", "none", "all": never 0 where some fail, never 100 where some hold. */
export function inHundred(share_frac: number): string {
  if (share_frac <= 0) return "none";
  return share_frac >= 1 ? "all" : `${Math.min(99, Math.max(1, Math.round(share_frac * 100)))} in 100`;
}

/** Fewer members than this leave the ends of a range to chance. */
export const FEW = 20;

/** What stands under the head of every comparison: how many runs, and what a range is worth. */
export function membersWords(members: number, seed: number): string {
  if (members < 2) return "One typical run, no range yet.";
  if (members < FEW) return `${members} members (seed ${seed}): too few for a range to rest on.`;
  return `A range holds 8 times in 10; ${members} members (seed ${seed}), the same ones throughout.`;
}
