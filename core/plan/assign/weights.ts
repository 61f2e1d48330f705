/**
 * What a fault of an assignment counts for, in kilograms that one would rather carry. What the ice itself weighs is
 * simulated; these are judgements, each with its reason, and no physics. Their order is what a cook would hold to: litres
 * that do not fit, then broken rules, then raw juice, then ice that food lacks, then drinks in the food's cooler, then
 * what is too heavy, then a cooler for the last half, then what is handy.
 *
 * @source engineering-judgement
 */
export const faults = {
  /** Raw food beside what is eaten as it is: as much as a cooler's ice of a week, so that it is the last resort. */
  rawBesideReady_kg: 50,
  /**
   * Drinks beside food: their lid opens all day. Less than raw juice, more than any gain of sharing ice, and than what a
   * case of cans in the other cooler would take off this one.
   */
  drinksBesideFood_kg: 20,
  /** Frozen food in one more cooler: a lone frozen bag thaws early, many keep each other cold. */
  frozenApart_kg: 2,
  /**
   * No cooler of several stays shut for the first half: for each day of that half, beside the ice that its lid would have
   * saved. A lid that nobody touches is never left open, and what is for the last days is not dug through for the first
   * ones'. Two days want no cooler of their own for that; a week does.
   */
  noLastHalf_kg_per_day: 2,
  /**
   * What asks to be cold and lies in the dry box, for each kilogram of it and for each item: warm, but fit to eat. A kilogram
   * counts for more than one far too heavy, so that nothing is left warm to make a cooler lighter.
   */
  warm_ratio: 3,
  warmItem_kg: 20,
  /** Against a rule that no cooler obeys: the seal, the kind of load, ice that freezes. Nothing but room is worth more. */
  ruleBroken_kg: 60,
  /**
   * Each kilogram that a cooler weighs over what its carriers should lift: as much as one carried elsewhere, so that load
   * moves to a cooler that can take it as long as that costs less ice than it takes off. Far over, twice as much: half
   * as heavy again is no longer lifted with care, it is not lifted, and two that are a little too heavy are better than one
   * that is much.
   */
  overweight_ratio: 1,
  farOverweight_ratio: 1,
  /**
   * Each kilogram of ice that a cooler lacks to the end, beyond the ice itself: drinks that are warm on the last days are
   * bearable, and so is what a shop on the way mends; food that is lost is not.
   */
  lackDrinks_ratio: 1.2,
  lackMended_ratio: 4,
  lack_ratio: 8,
  /** Each litre that does not fit: so much that it happens only where nothing fits. */
  overflow_kg_per_L: 100,
} as const;

/** Beyond so many times what its carriers should lift, a cooler is far too heavy. @source engineering-judgement */
export const farOver_ratio = 1.5;

/** Share of the cold of frozen food that its cooler gets before the food is taken out. @source engineering-judgement */
export const frozenUse_frac = 0.5;

/**
 * Most that one person is to lift of a cooler, in the best of grips: the load constant of the lifting equation. It is
 * held against here because nearly every packed cooler weighs more than the equation's own limit from the ground.
 *
 * @source niosh-94-110
 */
export const eachLifts_kg = 23;
