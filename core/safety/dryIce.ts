import { carbonDioxideGas_m3_per_kg, dryIce_C, dryIceSublimation_J_per_kg } from "../matter/dryIce.ts";
import { requireFinite } from "../quantity/errors.ts";
import type { PlaceKind } from "../sky/types.ts";

/**
 * What must be said wherever dry ice is named; it is a caution, not a reckoning of the gas in a room.
 *
 * @source osha-carbon-dioxide
 */
export const dryIceCaution: { code: string; says: string; source: string } = {
  code: "dry-ice",
  says:
    "Dry ice turns to carbon dioxide, which suffocates without warning: never in a closed car, tent, cabin or boat, nor in an airtight box, which may burst. " +
    "Wear gloves, air the place before going in, keep children away. Work places are limited to 5000 ppm over eight hours (OSHA). " +
    "It freezes what it touches: no drinks, eggs, greens or medicines beside it.",
  source: "osha-carbon-dioxide",
};

/**
 * What is left of dry ice that waited in a shut cooler: the heat that the body lets in at −78.5 °C, all of it spent on
 * sublimation, so that the loss does not hang on how much there is. Cooling the body itself is left out: it comes on top,
 * and a cooler that was warm loses more in its first hours.
 *
 * @param mass_kg put in, 0…1000
 * @param conductance_W_per_K of the cooler, 0…20
 * @param outside_C −60…90
 * @param for_s 0 or more
 * @throws DomainError for an argument out of range
 * @source derivation, from-memory
 */
export function dryIceLeft_kg(
  mass_kg: number,
  conductance_W_per_K: number,
  outside_C: number,
  for_s: number,
): number {
  requireFinite("mass_kg", mass_kg, 0, 1000);
  requireFinite("conductance_W_per_K", conductance_W_per_K, 0, 20);
  requireFinite("outside_C", outside_C, -60, 90);
  requireFinite("for_s", for_s, 0, 1e8);
  const lost_kg = (conductance_W_per_K * (outside_C - dryIce_C) * for_s) / dryIceSublimation_J_per_kg;
  return Math.max(0, mass_kg - lost_kg);
}

/** A limit of carbon dioxide in the air that people breathe. */
interface AirLimit {
  limit_ppm: number;
  says: string;
  source: string;
}

/**
 * Carbon dioxide in the air, parts in a million of its volume: over a working day, for a quarter of an hour, and at once
 * dangerous to life. They are for grown workers; children and the ill bear less.
 *
 * @source osha-carbon-dioxide
 */
export const airLimits: Readonly<Record<"day" | "short" | "danger", AirLimit>> = {
  day: { limit_ppm: 5000, says: "5000 ppm, the limit for eight hours (OSHA)", source: "osha-carbon-dioxide" },
  short: { limit_ppm: 30_000, says: "30 000 ppm, the limit for minutes", source: "osha-carbon-dioxide" },
  danger: { limit_ppm: 40_000, says: "40 000 ppm, dangerous to life", source: "osha-carbon-dioxide" },
};

/**
 * Carbon dioxide of fresh air.
 *
 * @source common-practice
 */
const freshAir_ppm: number = 420;

/**
 * The least air of each closed place: rooms of this kind are rarely smaller, and in a larger one it takes longer. A trunk
 * shares its air with the cabin. Open places have none.
 *
 * @source engineering-judgement
 */
export const closedRooms: Readonly<
  Partial<Record<PlaceKind, { least_m3: number; range_m3: readonly [number, number]; source: string }>>
> = {
  cabin: { least_m3: 2.5, range_m3: [2.5, 5], source: "engineering-judgement" },
  "closed car": { least_m3: 2.5, range_m3: [2.5, 5], source: "engineering-judgement" },
  trunk: { least_m3: 2.5, range_m3: [2.5, 5], source: "engineering-judgement" },
  tent: { least_m3: 2.5, range_m3: [2.5, 15], source: "engineering-judgement" },
  boat: { least_m3: 5, range_m3: [5, 30], source: "engineering-judgement" },
  indoors: { least_m3: 20, range_m3: [20, 150], source: "engineering-judgement" },
};

/** Gas let into a room that is well mixed. Gas heavier than air pools below: low beds and dogs get more than this says. */
export interface GassedRoom {
  gas_m3_per_h: number;
  room_m3: number;
  /** Changes of its air for fresh air, per hour; 0: shut tight. */
  airChanges_per_h: number;
}

/** @throws DomainError for an argument out of range */
function check({ gas_m3_per_h, room_m3, airChanges_per_h }: GassedRoom): void {
  requireFinite("gas_m3_per_h", gas_m3_per_h, 0, 1000);
  requireFinite("room_m3", room_m3, 0.05, 1e5);
  requireFinite("airChanges_per_h", airChanges_per_h, 0, 1000);
}

/** How much richer the room gets in an hour without fresh air. */
const rise_ppm_per_h = ({ gas_m3_per_h, room_m3 }: GassedRoom): number => (1e6 * gas_m3_per_h) / room_m3;

/**
 * Gas that a loss of dry ice makes, at 70 °F and one atmosphere; on a mountain it takes more room.
 *
 * @param loss_kg_per_h 0…100
 * @throws DomainError for a loss out of range
 * @source derivation
 */
export function dryIceGas_m3_per_h(loss_kg_per_h: number): number {
  return requireFinite("loss_kg_per_h", loss_kg_per_h, 0, 100) * carbonDioxideGas_m3_per_kg;
}

/**
 * Carbon dioxide in a room after a time: dC/dt = G/V − n·(C − C₀), from fresh air on.
 *
 * @param for_h 0 or more
 * @throws DomainError for an argument out of range
 * @source derivation
 */
export function carbonDioxide_ppm(room: GassedRoom, for_h: number): number {
  check(room);
  requireFinite("for_h", for_h, 0, 1e6);
  const n = room.airChanges_per_h;
  const lasting_h = n === 0 ? for_h : (1 - Math.exp(-n * for_h)) / n;
  return freshAir_ppm + rise_ppm_per_h(room) * lasting_h;
}

/**
 * When a room that begins with fresh air reaches a limit; null: never, at this change of air.
 *
 * @param limit_ppm above that of fresh air
 * @throws DomainError for an argument out of range
 * @source derivation
 */
export function timeToCarbonDioxide_h(room: GassedRoom, limit_ppm: number): number | null {
  check(room);
  requireFinite("limit_ppm", limit_ppm, freshAir_ppm, 1e6);
  const n = room.airChanges_per_h;
  const rise = rise_ppm_per_h(room);
  const wanted = limit_ppm - freshAir_ppm;
  if (rise <= n * wanted) return null;
  return n === 0 ? wanted / rise : -Math.log(1 - (n * wanted) / rise) / n;
}

/**
 * Changes of air per hour that hold a room under a limit for good.
 *
 * @param limit_ppm above that of fresh air
 * @throws DomainError for an argument out of range
 * @source derivation
 */
export function airChangesNeeded_per_h(
  room: Omit<GassedRoom, "airChanges_per_h">,
  limit_ppm: number,
): number {
  const shut = { ...room, airChanges_per_h: 0 };
  check(shut);
  requireFinite("limit_ppm", limit_ppm, freshAir_ppm + 1, 1e6);
  return rise_ppm_per_h(shut) / (limit_ppm - freshAir_ppm);
}
