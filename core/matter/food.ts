/** What a food is: raw meat and fish, ready to eat, fruit and vegetables, sold frozen, or a drink. */
export type FoodKind = "raw" | "rte" | "produce" | "frozen" | "drink";

/** What the public power-outage chart says of this food once it was above 40 °F for more than two hours. */
export type WarmWord = "discard" | "keep" | "keep whole" | "over 10 C for 8 h";

/**
 * A kind of food or drink: composition and the common rules that hold for it. It is not a lot of food: it has no
 * mass, no temperature and no package.
 */
export interface Food {
  key: string;
  name: string;
  /** Other names that find it. */
  aliases: readonly string[];
  /** Shares by mass; with `fibre_frac` apart from `carbohydrate_frac` the seven add up to 1. */
  water_frac: number;
  protein_frac: number;
  fat_frac: number;
  /** Without fibre. */
  carbohydrate_frac: number;
  fibre_frac: number;
  ash_frac: number;
  alcohol_frac: number;
  /** Air inside a piece as packed (crumb, leaves, a tray of berries), as a share of the piece's own volume. */
  airSpace_frac: number;
  /** Initial freezing point; null where there is no water to speak of. */
  freezes_C: number | null;
  freezesMark: "published" | "estimate";
  kind: FoodKind;
  warm: WarmWord;
  /** Days of cold storage at 40 °F, as the chart words them. */
  days: string;
  perishable: boolean;
  rawAnimal: boolean;
  /** Spoiled as goods by freezing: broken shells, limp leaves, burst cans, split sauces. */
  freezesBadly: boolean;
  /** Usual least dimension of one piece as packed. */
  thick_m: number;
  shape: "slab" | "cylinder" | "lump";
  /** How it is sold and kept: the state of food whose state nobody stated. */
  usualState: "chilled" | "ambient" | "frozen";
  source: string;
}
