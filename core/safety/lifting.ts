import { outerSize_m } from "../cooler/outerSize.ts";
import type { CoolerBody } from "../cooler/types.ts";
import { requireFinite } from "../quantity/errors.ts";
import { massWords } from "../quantity/show.ts";

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

/** End handles sit this far up the body, and hands reach down to a tall one. */
const handle_frac = 0.7;
const highestHandle_cm = 90;
const tailgate_cm = 75;
/** Ankles to the near end of the load, as the manual has it: its half-width is added. */
const ankles_cm = 20;

/** What a loaded cooler means for one or two people, with the limits that it was held against. */
interface TailgateLift {
  cooler: string;
  weight_kg: number;
  one: { limit_kg: number; index: number };
  two: { limit_kg: number; index: number };
  says: string;
}

/** The most for one person: start and end of the lift are both reckoned, and the stricter counts. */
function tailgateLimit_kg(body: CoolerBody): number {
  const { width_m, height_m } = outerSize_m(body);
  const reach_cm = Math.min(63, Math.max(25, 50 * width_m + ankles_cm));
  const handles_cm = Math.min(highestHandle_cm, 100 * height_m * handle_frac);
  const held = { reach_cm, travel_cm: tailgate_cm, twist_deg: 0, frequency_frac: 1, grip: "good" } as const;
  return Math.min(
    recommendedWeight_kg({ ...held, height_cm: handles_cm }),
    recommendedWeight_kg({ ...held, height_cm: handles_cm + tailgate_cm }),
  );
}

/**
 * A packed cooler lifted by its end handles from the ground to a tailgate, as `liftAdvice` has it, by one person or a
 * team: two share two thirds of the sum of their limits, three and more a half. More than four people find no hold on a
 * cooler and count as four.
 *
 * @param people 1 or more
 * @throws DomainError for a weight or a number of people out of range
 * @source niosh-94-110, hse-manual-handling, engineering-judgement
 */
export function coolerLift(weight_kg: number, people: number, body: CoolerBody): CoolerLift {
  requireFinite("weight_kg", weight_kg, 0, 2000);
  const hands = Math.min(4, requireFinite("people", people, 1, 1e6));
  const team_frac = hands < 2 ? 1 : hands < 3 ? 2 / 3 : 1 / 2;
  const recommended_kg = tailgateLimit_kg(body) * hands * team_frac;
  return { recommended_kg, index: weight_kg / recommended_kg };
}

/**
 * What lifting a loaded cooler now and then from the ground to a tailgate at 75 cm means, by its end handles. Where its
 * handles are and how far ahead they are held follow from the outside of the body: seven tenths of the way up, half a
 * width and 20 cm ahead of the ankles (at least 25, at most 63 cm). Two people count two thirds of the sum of both
 * limits, a rule of the UK HSE: NIOSH's equation does not cover teams, nor carrying, steps or slippery ground.
 *
 * @param weight_kg loaded, 0…2000
 * @throws DomainError for a weight out of range
 * @source niosh-94-110, hse-manual-handling, engineering-judgement
 */
export function liftAdvice(name: string, weight_kg: number, body: CoolerBody): TailgateLift {
  const [one, two] = ([1, 2] as const).map((people) => {
    const { recommended_kg, index } = coolerLift(weight_kg, people, body);
    return { limit_kg: recommended_kg, index };
  }) as [TailgateLift["one"], TailgateLift["two"]];
  return { cooler: name, weight_kg, one, two, says: liftWords(name, weight_kg, one, two) };
}

function liftWords(
  name: string,
  weight_kg: number,
  one: TailgateLift["one"],
  two: TailgateLift["two"],
): string {
  const both = (mass_kg: number): string => `${massWords(mass_kg, "metric")}, ${massWords(mass_kg, "us")}`;
  const teams = "two thirds of both together, UK HSE; NIOSH does not cover teams";
  const head = `${name} weighs ${both(weight_kg)}`;
  const most = `from the ground to a tailgate the NIOSH equation recommends at most ${both(one.limit_kg)} for one person, and ${both(two.limit_kg)} count for two (${teams})`;
  if (one.index <= 1) return `${head}: one person may lift it; ${most}.`;
  if (two.index <= 1) return `${head}: two people lift it; ${most}.`;
  const advice = `load it where it rides, last of all its ice, or lift it half empty`;
  return `${head}, ${two.index.toFixed(1)} times what counts for two: ${advice}; ${most}.`;
}
