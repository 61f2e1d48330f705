import type {
  BodyStart,
  CoolerBody,
  Cover,
  DrainHabit,
  IceForm,
  LayerWish,
  OpeningHabit,
  TopSheet,
} from "../cooler/types.ts";
import type { Food } from "../matter/food.ts";
import type { Spread } from "../matter/spread.ts";
import type { GroundKind, PlaceKind, Stay, Weather } from "../sky/types.ts";

/** One mistake in a file, told so that the person can mend it. */
export interface Problem {
  line: number | null;
  path: string;
  must: string;
  got: string;
  near: string | null;
}

/** A default that the reckoning uses because the file is silent. */
export interface Assumed {
  /** Path in the trip file, as one would write it to change the value, e.g. `coolers[0].openings.per day`. */
  path: string;
  /** The value as one would type it. */
  value: string;
  why: string;
  /** Its plausible range as one would type it, low and high; null where there is nothing to vary. */
  range: readonly [string, string] | null;
  source: string;
}

/** The nine that US law asks labels to name (FALCPA and FASTER Act, from memory); other places name more. */
export type Allergen =
  | "milk"
  | "egg"
  | "fish"
  | "shellfish"
  | "tree nuts"
  | "peanuts"
  | "wheat"
  | "soy"
  | "sesame";

export type LimitProfile = "consumer" | "inspected";

/** Work around the coolers that somebody does every day. */
export type Duty = "food" | "readings" | "water" | "ice" | "washing";

export interface CrewMember {
  name: string;
  /** All of it, in turn, where nothing was said. */
  does: readonly Duty[];
}

/** What one trip or test says of a cooler's conductance by itself. */
export interface LearnedRecord {
  trip: string;
  /** As typed; null: not said. */
  ended: string | null;
  from: "close-out" | "log" | "ice test";
  conductance_W_per_K: Spread;
}

/** What is known of one cooler from earlier trips. */
export interface CoolerHistory {
  /** Name of its file, as the trip file has it; null: it stands in the trip file itself. */
  file: string | null;
  cooler: string;
  /** Before the first record, and now. */
  before_W_per_K: Spread;
  now_W_per_K: Spread;
  records: readonly LearnedRecord[];
  /** Places of records that the others contradict. */
  odd: readonly number[];
}

export interface TripCooler {
  name: string;
  /** Its number in a fleet of coolers; null: it has none. */
  number: number | null;
  /** As typed ("65 qt"), or litres where inside sizes were given. */
  size: string;
  volume_m3: number;
  body: CoolerBody;
  /** True conductance / `body.measured_W_per_K`, where more is known of it than that it was measured; null: nothing more. */
  measured_frac: Spread | null;
  /** null: none, or overruled by a stated conductance. */
  history: CoolerHistory | null;
  start: BodyStart;
  holds: "food" | "drinks" | "any";
  sealedUntil_s: number | null;
  openings: OpeningHabit | null;
  drain: DrainHabit;
  cover: Cover;
  top: TopSheet;
}

export interface TripFood {
  /** `food[3]`; unique. */
  id: string;
  path: string;
  name: string;
  /** As typed ("3 lb", "24 × 355 mL"). */
  amount: string;
  like: Food;
  raw: boolean;
  state: "frozen" | "chilled" | "ambient" | "dry";
  start_C: number;
  mass_kg: number;
  pieces: number;
  thick_m: number;
  shape: "slab" | "cylinder" | "lump";
  freezesBadly: boolean;
  watertight: boolean;
  /** null: eaten throughout the trip, a part at every meal. */
  eat_s: number | null;
  /** Index into coolers; null: dry box. */
  cooler: number | null;
  layer: LayerWish;
  /** Warm hours it had before it went in, as declared. */
  warmBefore_s: number;
  /** null: aboard from the start. */
  putIn_s: number | null;
  /** What the file leaves to the planner: which cooler, and whether frozen. */
  open: { place: boolean; state: boolean };
  /** Moments at which equal parts are eaten, where it is for several meals; null: all at `eat_s`, or throughout. */
  parts_s: readonly number[] | null;
  /** What the amount was counted from: a portion as typed, eaters (a child counts in part), meals; null: given. */
  portion: { each: string; heads: number; meals: number } | null;
  /** null: the file does not say. */
  contains: readonly Allergen[] | null;
  /** Of the whole amount. */
  price: number | null;
  /** Packed under vacuum or gas. */
  reducedOxygen: boolean;
  /** Thawed once and frozen again. */
  refrozen: boolean;
  /** Days in the cold before departure, from making, opening or buying; null: not said. */
  daysCold: number | null;
}

/** A big load that may come warm at an unknown hour: game, fish. */
export interface TripWarmLoad {
  path: string;
  name: string;
  amount: string;
  mass_kg: number;
  pieces: number;
  like: Food;
  start_C: number;
  thick_m: number;
  shape: "slab" | "cylinder" | "lump";
  boneIn: boolean;
  /** The latest moment it may come. */
  latest_s: number;
  cooler: number;
}

/** What was found out about the rules of the place; every null is a question that is still open. */
export interface TripRules {
  agency: string | null;
  /** When its order was last read, as typed. */
  read: string | null;
  permit: string | null;
  bears: "locker" | "container" | "hang" | "none" | null;
  /** Inside of the food locker. */
  locker: { length_m: number; width_m: number; height_m: number } | null;
  glass: boolean | null;
  fires: string | null;
  packOut: string | null;
  carcass: string | null;
}

export interface TripIce {
  id: string;
  path: string;
  form: IceForm;
  mass_kg: number;
  pieces: number;
  /** As typed ("10 lb", "1 gal"). */
  each: string;
  start_C: number;
  liquid_frac: number;
  cooler: number;
  layer: LayerWish;
  price: number | null;
  putIn_s: number | null;
  /** How long before departure it was bought or made; dry ice loses some of itself in that time. */
  boughtBefore_s: number;
}

export interface TripSupply {
  path: string;
  form: IceForm;
  each: string;
  each_kg: number;
  at_C: number;
  liquid_frac: number;
  price: number | null;
  where: string;
  /** null: before departure. */
  when_s: readonly number[] | null;
  open: { from_s: number; to_s: number } | null;
  closed: readonly string[];
  max: number | null;
  chance_frac: number | null;
  away_s: number | null;
}

export type TripEvent =
  | { do: "merge"; t_s: number; from: number; into: number; path: string }
  | { do: "drain"; t_s: number; cooler: number; path: string }
  | { do: "open"; t_s: number; cooler: number; for_s: number; path: string }
  | { do: "cover"; t_s: number; cooler: number; cover: Cover; path: string }
  | { do: "wet cloth"; t_s: number; cooler: number; path: string }
  /** Takes this share of what is left of the food with this id, beside what is eaten of it. */
  | { do: "take out"; t_s: number; item: string; share_frac: number; path: string }
  | {
      do: "move";
      t_s: number;
      cooler: number;
      until_s: number;
      place: PlaceKind;
      shade_frac: number | null;
      ground: GroundKind | null;
      air_C: number | null;
      water_C: number | null;
      airChanges_per_h: number | null;
      path: string;
    };

/** A whole trip in SI units, every default filled in. "add ice" and "put in" events stand in `ice` and `food` with `putIn_s`. */
export interface Trip {
  title: string;
  /** Local ISO without offset, as typed. */
  depart: string;
  return: string;
  duration_s: number;
  /** Local time of day at departure. */
  departClock_s: number;
  place: { latitude_deg: number; longitude_deg: number; elevation_m: number; timezone: string };
  party: {
    adults: number;
    children: number;
    vulnerable: boolean;
    /** Heads by diet; whoever is on none eats everything. */
    diets: Readonly<Record<string, number>>;
    /** 1: usual portions. */
    appetite_frac: number;
    allergies: readonly Allergen[];
    /** Who does the work, in the file's order; empty: nobody was named. */
    crew: readonly CrewMember[];
  };
  limit: { profile: LimitProfile; limit_C: number };
  confidence_frac: number;
  meals: { breakfast_s: number; lunch_s: number; dinner_s: number };
  weather: Weather;
  /** Where everything is, in order, without gaps from 0 to duration_s. */
  legs: readonly Stay[];
  coolers: readonly TripCooler[];
  food: readonly TripFood[];
  ice: readonly TripIce[];
  supply: readonly TripSupply[];
  freezer: { space_m3: number; at_C: number } | null;
  carry: { people: number };
  warmLoad: TripWarmLoad | null;
  rules: TripRules | null;
  /** In order of time. */
  events: readonly TripEvent[];
  assumed: readonly Assumed[];
  /** The file as parsed, untouched: numbers are printed back as typed. */
  typed: unknown;
}

export type TripReading = { ok: true; trip: Trip } | { ok: false; problems: readonly Problem[] };
