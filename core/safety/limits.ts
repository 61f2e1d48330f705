import type { LimitProfile } from "../trip/types.ts";

/** The temperature that cold food must stay under, and whose rule it is. */
interface Limit {
  limit_C: number;
  /** In both scales, as printed beside a verdict. */
  says: string;
  source: string;
}

/**
 * The named limits, converted exactly: 40 °F for a household, 41 °F (5 °C) for an inspected kitchen. They are not
 * growth thresholds: some bacteria grow below either.
 *
 * @source fsis-food-safety, fda-food-code-2022
 */
export const limits: Readonly<Record<LimitProfile, Limit>> = {
  consumer: { limit_C: (40 - 32) / 1.8, says: "40 °F (4.4 °C)", source: "fsis-food-safety" },
  inspected: { limit_C: (41 - 32) / 1.8, says: "41 °F (5 °C)", source: "fda-food-code-2022" },
};

/**
 * Air hotter than this halves the time perishable food may be warm: 90 °F.
 *
 * @source fsis-food-safety
 */
export const hotAir_C: number = (90 - 32) / 1.8;

/**
 * Opened mayonnaise and its like count their warm time above this: 50 °F.
 *
 * @source fsis-food-safety
 */
export const mayonnaiseWarm_C: number = (50 - 32) / 1.8;

/**
 * Fish packed without air is kept at most this warm: 38 °F. Above it bacteria that need no air may make their poison
 * before the fish smells of anything.
 *
 * @source growth-minima
 */
export const fishWithoutAir_C: number = (38 - 32) / 1.8;
