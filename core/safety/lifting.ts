import { requireFinite } from "../quantity/errors.ts";

/** One lift with both hands, as the NIOSH equation describes it; lengths in centimetres as in the manual. */
export interface Lift {
  /** Hands ahead of the ankles. */
  reach_cm: number;
  /** Hands above the floor at the start (or at the end) of the lift. */
  height_cm: number;
  /** Up or down. */
  travel_cm: number;
  /** Load to the side of straight ahead. */
  twist_deg: number;
  /** From the manual's table for the rate and length of the work; 1 for a lift now and then. */
  frequency_frac: number;
  grip: "good" | "fair" | "poor";
}

/**
 * Recommended weight limit of the revised NIOSH lifting equation, at full precision (the manual rounds each multiplier
 * to two places). Zero where the equation says not to lift: reach over 63 cm, height or travel over 175 cm, twist over
 * 135°. It does not cover carrying, one hand, slippery ground, or two people.
 *
 * @throws DomainError for a length, angle or share that is negative or not a number
 * @source niosh-94-110
 */
export function recommendedWeight_kg(lift: Lift): number {
  const reach_cm = requireFinite("reach_cm", lift.reach_cm, 0, 500);
  const height_cm = requireFinite("height_cm", lift.height_cm, 0, 500);
  const travel_cm = requireFinite("travel_cm", lift.travel_cm, 0, 500);
  const twist_deg = requireFinite("twist_deg", lift.twist_deg, 0, 360);
  const frequency_frac = requireFinite("frequency_frac", lift.frequency_frac, 0, 1);
  if (reach_cm > 63 || height_cm > 175 || travel_cm > 175 || twist_deg > 135) return 0;
  const horizontal = 25 / Math.max(reach_cm, 25);
  const vertical = 1 - 0.003 * Math.abs(height_cm - 75);
  const distance = travel_cm < 25 ? 1 : 0.82 + 4.5 / travel_cm;
  const asymmetric = 1 - 0.0032 * twist_deg;
  const coupling = lift.grip === "good" ? 1 : lift.grip === "poor" ? 0.9 : height_cm < 75 ? 0.95 : 1;
  return 23 * horizontal * vertical * distance * asymmetric * frequency_frac * coupling;
}

/** How a packed cooler compares with what may be lifted. */
interface CoolerLift {
  recommended_kg: number;
  /** Weight over what is recommended: above 1 some people are hurt, above 3 nearly anyone. */
  index: number;
}

/**
 * A packed cooler lifted now and then by its end handles, from the ground (handles at 30 cm) up half a metre, held
 * 40 cm ahead. One person or a team: two share two thirds of the sum of both limits, three and more a half. Carrying it
 * away is harder than this, and is not covered. More than four people find no hold on a cooler and count as four.
 *
 * @param people 1 or more
 * @source niosh-94-110, hse-manual-handling
 */
export function coolerLift(weight_kg: number, people: number): CoolerLift {
  requireFinite("weight_kg", weight_kg, 0, 2000);
  const hands = Math.min(4, requireFinite("people", people, 1, 1e6));
  const one_kg = recommendedWeight_kg({
    reach_cm: 40,
    height_cm: 30,
    travel_cm: 50,
    twist_deg: 0,
    frequency_frac: 1,
    grip: "good",
  });
  const team_frac = hands < 2 ? 1 : hands < 3 ? 2 / 3 : 1 / 2;
  const recommended_kg = one_kg * hands * team_frac;
  return { recommended_kg, index: weight_kg / recommended_kg };
}
