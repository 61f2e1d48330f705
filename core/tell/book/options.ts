import type { UnitSystem } from "../../quantity/units.ts";
import type { Paper } from "./flow.ts";

/** Drawn pictures, each one SVG element of its own; what is missing and cannot be drawn here is left out. */
export interface BookPictures {
  /** Coolers by days. */
  strip?: string;
  /** Pack map in section and plan, by the cooler's name. */
  pack?: Readonly<Record<string, string>>;
  /** Where the cold goes, by the cooler's name. */
  stair?: Readonly<Record<string, string>>;
  /** Ice left, by the cooler's name. */
  band?: Readonly<Record<string, string>>;
  /** What each merge is worth, in the plan's order. */
  merges?: readonly string[];
  /** Food against the clock. */
  clock?: string;
}

export interface BookOptions {
  units: UnitSystem;
  /** Date the book was made, as it is to be printed. */
  made: string;
  paper: Paper;
  pictures: BookPictures;
}
