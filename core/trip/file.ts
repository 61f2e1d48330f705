import type { BuildKey } from "../cooler/builds.ts";
import type { Cover, DrainHabit, IceForm, InsulationKey, TopSheet } from "../cooler/types.ts";
import type { GroundKind, PlaceKind } from "../sky/types.ts";

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

export interface CoolerFile {
  name: string;
  size?: Maybe<string>;
  build?: Maybe<BuildKey>;
  inside?: Maybe<InsideFile>;
  wall?: Maybe<WallFile>;
  conductance?: Maybe<string>;
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
  like?: Maybe<string>;
  raw?: Maybe<boolean>;
  state?: Maybe<FoodStateWord>;
  at?: Maybe<string>;
  shape?: Maybe<ShapeFile>;
  thick?: Maybe<string>;
  "freezes badly"?: Maybe<boolean>;
  watertight?: Maybe<boolean>;
  "warm before"?: Maybe<string>;
  eat?: Maybe<string>;
  in?: Maybe<string>;
  layer?: Maybe<LayerFile>;
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

export type EventFile =
  | AddIceFile
  | PutInFile
  | MoveFile
  | { at: string; do: "merge"; from: string; into: string }
  | { at: string; do: "drain"; cooler: string }
  | { at: string; do: "open"; cooler: string; for?: Maybe<string> }
  | { at: string; do: "cover"; cooler: string; cover: Cover }
  | { at: string; do: "wet cloth"; cooler: string };

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
  coolers: CoolerFile[];
  food?: Maybe<FoodFile[]>;
  ice?: Maybe<IceFile[]>;
  supply?: Maybe<SupplyFile[]>;
  freezer?: Maybe<{ space: string; at?: Maybe<string> }>;
  carry?: Maybe<{ people: number }>;
  events?: Maybe<EventFile[]>;
}
