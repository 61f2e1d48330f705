import type { BuildKey } from "../cooler/builds.ts";
import type { Cover, DrainHabit, IceForm, InsulationKey, TopSheet } from "../cooler/types.ts";
import type { GroundKind, PlaceKind } from "../sky/types.ts";
import type { Allergen, Duty } from "./types.ts";

/*
 * The trip file as a person writes it, once its shape is checked: quantities, moments and clocks are still text.
 */

type Maybe<T> = T | undefined;

export interface PlaceFile {
  latitude?: Maybe<number>;
  longitude?: Maybe<number>;
  elevation?: Maybe<string>;
  timezone?: Maybe<string>;
}

export interface PartyFile {
  adults?: Maybe<number>;
  children?: Maybe<number>;
  vulnerable?: Maybe<boolean>;
  diets?: Maybe<Record<string, number>>;
  appetite?: Maybe<string>;
  "child portion"?: Maybe<string>;
  allergies?: Maybe<Allergen[]>;
  crew?: Maybe<{ name: string; does?: Maybe<Duty[]> }[]>;
}

export interface MealsFile {
  breakfast?: Maybe<string>;
  lunch?: Maybe<string>;
  dinner?: Maybe<string>;
}

export interface DayFile {
  high?: Maybe<string>;
  low?: Maybe<string>;
  humidity?: Maybe<string>;
  cloud?: Maybe<string>;
  wind?: Maybe<string>;
}

export interface WeatherFile {
  days?: Maybe<DayFile[]>;
  hourly?: Maybe<{ file: string }>;
}

export interface SpotFile {
  shade?: Maybe<string>;
  ground?: Maybe<GroundKind>;
  air?: Maybe<string>;
  water?: Maybe<string>;
  "air changes"?: Maybe<number>;
}

export interface LegFile extends SpotFile {
  until?: Maybe<string>;
  where?: Maybe<PlaceKind>;
}

export interface InsideFile {
  length: string;
  width: string;
  height: string;
}

export interface WallFile {
  lid?: Maybe<string>;
  sides?: Maybe<string>;
  base?: Maybe<string>;
  insulation?: Maybe<InsulationKey>;
}

export interface StartFile {
  at?: Maybe<string>;
  prechill?: Maybe<string>;
  with?: Maybe<string>;
  kept?: Maybe<string>;
}

export interface OpeningsFile {
  "per day"?: Maybe<number>;
  for?: Maybe<string>;
  from?: Maybe<string>;
  to?: Maybe<string>;
}

export type ColorWord = "white" | "light" | "medium" | "dark";

/** A cooler without its name: what a fleet file says of one. */
export interface CoolerKeysFile {
  size?: Maybe<string>;
  build?: Maybe<BuildKey>;
  inside?: Maybe<InsideFile>;
  wall?: Maybe<WallFile>;
  conductance?: Maybe<string>;
  /** A file beside this one, or what such a file holds. */
  history?: Maybe<string | InlineHistory>;
  weight?: Maybe<string>;
  color?: Maybe<ColorWord>;
  absorptance?: Maybe<number>;
  start?: Maybe<StartFile>;
  holds?: Maybe<"food" | "drinks" | "any">;
  "sealed until"?: Maybe<string>;
  openings?: Maybe<OpeningsFile>;
  drain?: Maybe<DrainHabit>;
  cover?: Maybe<Cover>;
  top?: Maybe<TopSheet>;
}

export interface CoolerFile extends CoolerKeysFile {
  name: string;
  number?: Maybe<number>;
}

/** The numbered coolers that someone owns, in a file of their own. */
export interface FleetFile {
  "coldstow-fleet": 1;
  coolers: (CoolerKeysFile & { number: number })[];
}

interface ConductanceFile {
  low: string;
  likely: string;
  high: string;
}

/** What trips and tests taught of one cooler, in a file of its own. */
export interface HistoryFile {
  "coldstow-history": 1;
  cooler: string;
  before: ConductanceFile;
  learned: (ConductanceFile & {
    trip: string;
    ended?: Maybe<string>;
    from?: Maybe<"close-out" | "log" | "ice test">;
  })[];
}

/** The same, written into a trip file at its cooler. */
export interface InlineHistory {
  before: HistoryFile["before"];
  learned: HistoryFile["learned"];
}

export interface ShapeFile {
  bag?: Maybe<string>;
  round?: Maybe<string>;
  lump?: Maybe<string>;
}

export type LayerFile = "base" | "fill" | "top" | number;
export type FoodStateWord = "frozen" | "chilled" | "ambient" | "dry";

export interface FoodFile {
  name: string;
  amount?: Maybe<string>;
  count?: Maybe<number>;
  each?: Maybe<string>;
  /** A weight or volume, or pieces of `each`; by meal. */
  "per person"?: Maybe<string | number>;
  for?: Maybe<string>;
  "not for"?: Maybe<string>;
  like?: Maybe<string>;
  raw?: Maybe<boolean>;
  state?: Maybe<FoodStateWord>;
  at?: Maybe<string>;
  shape?: Maybe<ShapeFile>;
  thick?: Maybe<string>;
  "freezes badly"?: Maybe<boolean>;
  watertight?: Maybe<boolean>;
  "warm before"?: Maybe<string>;
  "vacuum packed"?: Maybe<boolean>;
  refrozen?: Maybe<boolean>;
  "days old"?: Maybe<number>;
  contains?: Maybe<Allergen[]>;
  price?: Maybe<number>;
  eat?: Maybe<string | string[]>;
  in?: Maybe<string>;
  layer?: Maybe<LayerFile>;
}

export interface WarmLoadFile {
  name: string;
  amount: string;
  by: string;
  like?: Maybe<string>;
  at?: Maybe<string>;
  thick?: Maybe<string>;
  shape?: Maybe<ShapeFile>;
  pieces?: Maybe<number>;
  bone?: Maybe<"in" | "out">;
  into?: Maybe<string>;
}

export interface RulesFile {
  agency?: Maybe<string>;
  read?: Maybe<string>;
  permit?: Maybe<string>;
  bears?: Maybe<"locker" | "container" | "hang" | "none">;
  locker?: Maybe<InsideFile>;
  glass?: Maybe<boolean>;
  fires?: Maybe<string>;
  "pack out"?: Maybe<string>;
  carcass?: Maybe<string>;
}

/** Ice by form and amount, wherever it is named: aboard, put in later, or for sale. */
export interface IceAmountFile {
  form: IceForm;
  amount?: Maybe<string>;
  pieces?: Maybe<number>;
  each?: Maybe<string>;
  liquid?: Maybe<string>;
  price?: Maybe<number>;
}

export interface IceFile extends IceAmountFile {
  bought?: Maybe<string>;
  at?: Maybe<string>;
  in?: Maybe<string>;
  layer?: Maybe<LayerFile>;
}

export interface SupplyFile {
  form: IceForm;
  each: string;
  at?: Maybe<string>;
  liquid?: Maybe<string>;
  price?: Maybe<number>;
  where?: Maybe<string>;
  when?: Maybe<string | string[]>;
  open?: Maybe<string>;
  closed?: Maybe<string[]>;
  max?: Maybe<number>;
  chance?: Maybe<string>;
  away?: Maybe<string>;
}

export interface AddIceFile extends IceAmountFile {
  at: string;
  do: "add ice";
  to: string;
  from?: Maybe<string>;
  layer?: Maybe<LayerFile>;
}

export interface PutInFile {
  at: string;
  do: "put in";
  item: FoodFile;
  to: string;
}

export interface MoveFile extends SpotFile {
  at: string;
  do: "move";
  cooler: string;
  to: PlaceKind;
  until?: Maybe<string>;
}

/** Food or drink that leaves its cooler otherwise than at its meals. */
export interface TakeOutFile {
  at: string;
  do: "take out";
  item: string;
  share?: Maybe<string>;
}

export type EventFile =
  | AddIceFile
  | PutInFile
  | MoveFile
  | { at: string; do: "merge"; from: string; into: string }
  | { at: string; do: "drain"; cooler: string }
  | { at: string; do: "open"; cooler: string; for?: Maybe<string> }
  | { at: string; do: "cover"; cooler: string; cover: Cover }
  | { at: string; do: "wet cloth"; cooler: string }
  | TakeOutFile;

export interface TripFile {
  coldstow?: Maybe<1>;
  title?: Maybe<string>;
  depart: string;
  return: string;
  place?: Maybe<PlaceFile>;
  party?: Maybe<PartyFile>;
  limit?: Maybe<"consumer" | "inspected">;
  confidence?: Maybe<string>;
  meals?: Maybe<MealsFile>;
  weather?: Maybe<WeatherFile>;
  legs?: Maybe<LegFile[]>;
  fleet?: Maybe<string>;
  coolers: CoolerFile[];
  food?: Maybe<FoodFile[]>;
  ice?: Maybe<IceFile[]>;
  supply?: Maybe<SupplyFile[]>;
  freezer?: Maybe<{ space: string; at?: Maybe<string> }>;
  carry?: Maybe<{ people: number }>;
  "warm load"?: Maybe<WarmLoadFile>;
  rules?: Maybe<RulesFile>;
  events?: Maybe<EventFile[]>;
}
