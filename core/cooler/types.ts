import type { EnthalpyCurve } from "../matter/curve.ts";
import type { Stay, Surroundings } from "../sky/types.ts";
import type { Closures } from "./closures.ts";

export type InsulationKey = "polyurethane" | "EPS" | "XPS" | "vacuum panel" | "soft foam" | "air";

/** One zone of the wall: lid, four sides, or base. Stated thickness of the insulation between the plastic skins. */
export interface WallZone {
  thickness_m: number;
  insulation: InsulationKey;
}

/** A cooler's body as built; no contents, no temperature. */
export interface CoolerBody {
  inside: { length_m: number; width_m: number; height_m: number };
  lid: WallZone;
  sides: WallZone;
  base: WallZone;
  emptyWeight_kg: number;
  /** Linear conductance of the lid joint, hinges and drain, per metre of lid perimeter. */
  seal_W_per_mK: number;
  /** Changes of the gas volume per hour through the joint. */
  leak_per_h: number;
  /** Solar absorptance of the outside, lid and sides. */
  absorptance_frac: number;
  /** Measured whole-cooler conductance (contract §5); the insulation is scaled to meet it. */
  measured_W_per_K: number | null;
}

/** The state of the body when the lid is shut on the load (t = 0). */
export type BodyStart =
  | { kind: "uniform"; body_C: number }
  /** Sacrificial ice and its water stood in the box, in a room, for so long before packing. */
  | { kind: "prechill"; for_s: number; ice_kg: number; room_C: number };

export type Cover = "none" | "wet cloth" | "reflective" | "blanket" | "wet cloth inside";
export type TopSheet = "none" | "foam sheet" | "cold packs";
export type DrainHabit = "keep" | "daily" | "open";

/** Openings whose exact moments nobody knows: so many a day of such a length, spread over these hours. */
export interface OpeningHabit {
  perDay: number;
  each_s: number;
  /** Local time of day. */
  from_s: number;
  to_s: number;
}

export type IceForm = "block" | "cube" | "crushed" | "jug" | "gel pack" | "eutectic pack" | "dry ice";
/** Where in the column the person wants it: a row number counts from the base. */
export type LayerWish = "base" | "fill" | "top" | number | null;

/** Ice or a pack as put in. One lot may be several equal pieces. */
export interface IceLot {
  kind: "ice";
  id: string;
  form: IceForm;
  mass_kg: number;
  pieces: number;
  start_C: number;
  /** Share of the mass that is already water at the start (shop ice). */
  liquid_frac: number;
  layer: LayerWish;
}

/** Food or drink as put in: thermal facts only, no rules about eating it. */
export interface FoodLot {
  kind: "food";
  id: string;
  mass_kg: number;
  pieces: number;
  start_C: number;
  curve: EnthalpyCurve;
  density_kg_per_m3: number;
  /** Conductivity, unfrozen and frozen. */
  k_W_per_mK: number;
  kFrozen_W_per_mK: number;
  /** Least dimension of one piece (slab thickness or diameter). */
  thick_m: number;
  shape: "slab" | "cylinder" | "lump";
  layer: LayerWish;
  /** Order from the base when no wish is given: larger lies lower (hours until it is eaten, raw at the bottom). */
  depth: number;
}

export type Lot = IceLot | FoodLot;

/** Something that happens at a moment; `t_s` counts from departure. */
export type Act =
  | { do: "open"; t_s: number; cooler: number; for_s: number }
  | { do: "put in"; t_s: number; cooler: number; lot: Lot }
  /** Takes out this share of what is left of the lot. */
  | { do: "take out"; t_s: number; lot: string; share_frac: number }
  | { do: "drain"; t_s: number; cooler: number }
  | { do: "merge"; t_s: number; from: number; into: number }
  | { do: "cover"; t_s: number; cooler: number; cover: Cover }
  | { do: "wet cloth"; t_s: number; cooler: number };

/** The same as the simulation takes it: openings at an even rate within stretches of elapsed time. */
export interface OpeningSpans {
  perDay: number;
  each_s: number;
  /** One stretch a day, in order, without overlap. */
  spans_s: readonly (readonly [number, number])[];
}

/** What stands around one cooler through time: where it stays, and the sky there. */
export interface Around {
  stays: readonly Stay[];
  /** Fills `out` for the moment `t_s`; smooth between `breaks_s`. */
  at(t_s: number, out: Surroundings): Surroundings;
  breaks_s: readonly number[];
}

export interface CoolerInput {
  name: string;
  body: CoolerBody;
  start: BodyStart;
  cover: Cover;
  top: TopSheet;
  drain: DrainHabit;
  openings: OpeningSpans | null;
  /** No opening of the habit happens before this moment. */
  sealedUntil_s: number | null;
  around: Around;
  lots: readonly Lot[];
  /** This cooler's own; left out: those of the run. */
  closures?: Readonly<Closures>;
}

export interface FleetInput {
  end_s: number;
  coolers: readonly CoolerInput[];
  acts: readonly Act[];
}
