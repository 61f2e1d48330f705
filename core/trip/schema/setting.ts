import * as v from "valibot";
import type { GroundKind } from "../../sky/types.ts";
import { duties } from "../duties.ts";
import type { LegFile, MealsFile, PartyFile, PlaceFile, WeatherFile } from "../file.ts";
import {
  allergenList,
  clock,
  groundSchema,
  keyName,
  list,
  moment,
  number,
  oneOf,
  placeSchema,
  quantity,
  text,
  whole,
  yesNo,
} from "./words.ts";

export const placeFileSchema: v.GenericSchema<unknown, PlaceFile> = v.strictObject(
  {
    latitude: v.optional(number(-90, 90, "Degrees north of the equator")),
    longitude: v.optional(number(-180, 180, "Degrees east of Greenwich")),
    elevation: v.optional(quantity("length", "Height above the sea")),
    timezone: v.optional(text("a time zone of the IANA list, such as America/Denver")),
  },
  "a mapping with latitude and longitude",
);

export const appetiteWords = "a share with its sign, from 30 % to 300 %, such as 120 %";

const diets = v.pipe(
  v.record(
    v.pipe(
      v.string(),
      v.regex(keyName, "the name of a diet, such as vegetarian: at most 40 characters, no dots or brackets"),
    ),
    whole(0, 500, "Heads on this diet"),
    "a mapping from diets to heads, such as vegetarian: 2",
  ),
  v.maxEntries(20, "at most 20 diets"),
  v.description("How many are on each diet; whoever is on none eats everything"),
);

const crewMember = v.strictObject(
  {
    name: text("a name"),
    does: v.optional(list(oneOf(duties, "Work that this one does; left out: all of it, in turn"), 5)),
  },
  "a mapping with name, does",
);

export const partySchema: v.GenericSchema<unknown, PartyFile> = v.strictObject(
  {
    adults: v.optional(whole(0, 500, "Adults who eat")),
    children: v.optional(whole(0, 500, "Children who eat")),
    vulnerable: v.optional(
      yesNo("Whether an infant, someone pregnant, over 65 or with weakened immunity eats with you"),
    ),
    diets: v.optional(diets),
    appetite: v.optional(
      v.pipe(v.string(appetiteWords), v.description(`How much you eat, of usual portions: ${appetiteWords}`)),
    ),
    "child portion": v.optional(quantity("share", "What a child eats, of an adult's portion")),
    allergies: v.optional(allergenList("What someone of the party must not eat")),
    crew: v.optional(v.pipe(list(crewMember, 60), v.description("Who does the work around the coolers"))),
  },
  "a mapping with adults, children, vulnerable, diets",
);

export const mealsSchema: v.GenericSchema<unknown, MealsFile> = v.strictObject(
  {
    breakfast: v.optional(clock("When breakfast is taken")),
    lunch: v.optional(clock("When lunch is taken")),
    dinner: v.optional(clock("When dinner is taken")),
  },
  "a mapping with breakfast, lunch, dinner",
);

const day = v.strictObject(
  {
    high: v.optional(quantity("temperature", "Highest air temperature of the day")),
    low: v.optional(quantity("temperature", "Lowest air temperature of the day")),
    humidity: v.optional(quantity("share", "Mean relative humidity")),
    cloud: v.optional(quantity("share", "Share of the sky under cloud")),
    wind: v.optional(quantity("speed", "Mean wind in the open")),
  },
  "a mapping with high and low",
);

export const weatherSchema: v.GenericSchema<unknown, WeatherFile> = v.strictObject(
  {
    days: v.optional(
      v.pipe(
        list(day, 90),
        v.minLength(1, "a list of at least one day"),
        v.description("First entry is day 1; the last repeats"),
      ),
    ),
    hourly: v.optional(
      v.strictObject(
        { file: text("an .epw or .csv file in the folder of the trip file or below") },
        "a mapping with file",
      ),
    ),
  },
  "a mapping with days or hourly",
);

type Optional<T> = v.OptionalSchema<v.GenericSchema<unknown, T>, undefined>;

/** Keys of the spot where a cooler stands, shared by legs and moves. */
export const spotEntries: {
  readonly shade: Optional<string>;
  readonly ground: Optional<GroundKind>;
  readonly air: Optional<string>;
  readonly water: Optional<string>;
  readonly "air changes": Optional<number>;
} = {
  shade: v.optional(quantity("share", "Share of the sky and sun taken away")),
  ground: v.optional(groundSchema),
  air: v.optional(quantity("temperature", "Known air there, instead of the weather or the place's own rule")),
  water: v.optional(quantity("temperature", "River or sea under a raft or hull")),
  "air changes": v.optional(
    number(0, 500, "Fresh air of a closed place: how often its air is renewed, per hour; counts for dry ice"),
  ),
};

export const legSchema: v.GenericSchema<unknown, LegFile> = v.strictObject(
  {
    until: v.optional(moment("When this leg ends; the last one holds until return")),
    where: v.optional(placeSchema),
    ...spotEntries,
  },
  "a mapping with until and where",
);
