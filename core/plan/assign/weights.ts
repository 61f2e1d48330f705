/**
 * What a fault of an assignment counts for, in kilograms of ice that one would rather carry. They rank faults and are no
 * physics: what the ice itself weighs is simulated. Judgements, each with its reason.
 *
 * @source engineering-judgement
 */
export const faults = {
  /** Raw food beside what is eaten as it is: as much as a cooler's ice of some days, so that it is the last resort. */
  rawBesideReady_kg: 30,
  /** Drinks beside food: their lid opens all day. Less than raw juice, more than any gain of sharing ice. */
  drinksBesideFood_kg: 12,
  /** Frozen food in one more cooler: a lone frozen bag thaws early, many keep each other cold. */
  frozenApart_kg: 2,
  /** No cooler of several stays shut for the first half: beside the ice that its lid would have saved. */
  noLastHalf_kg: 2,
  /** What asks to be cold and lies in the dry box, for each kilogram of it and for itself: warm, but fit to drink. */
  warm_ratio: 1.5,
  warmItem_kg: 12,
  /** Against a rule that no cooler obeys: the seal, the kind of load, ice that freezes. Nothing but room is worth more. */
  ruleBroken_kg: 60,
  /** Each kilogram that a cooler weighs over what its carriers should lift. */
  overweight_ratio: 0.2,
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

/** Share of the cold of frozen food that its cooler gets before the food is taken out. @source engineering-judgement */
export const frozenUse_frac = 0.5;

/**
 * Most that one person is to lift of a cooler, in the best of grips: the load constant of the lifting equation. It is
 * held against here because nearly every packed cooler weighs more than the equation's own limit from the ground.
 *
 * @source niosh-94-110
 */
export const eachLifts_kg = 23;
