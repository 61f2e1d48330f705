/*
 * What a person can say of a trip, section by section, as the trip file has it. A field left empty is left to us, and is
 * then listed among what was assumed.
 */

/** One thing to say. `path` is that of the trip file, within its row where it stands in a list. */
export interface FieldSpec {
  path: string;
  label: string;
  /** An example of what to type. */
  hint?: string;
  kind: "text" | "whole" | "number" | "moment" | "clock" | "yes" | "choice" | "food" | "cooler";
  choices?: readonly string[];
}

/** Rows of the same kind. */
export interface ListSpec {
  /** Path of the list. */
  path: string;
  /** What one row is called. */
  one: string;
  fields: readonly FieldSpec[];
  /** What stands behind "more" in a row. */
  more?: readonly FieldSpec[];
  /** A new row. */
  fresh: Readonly<Record<string, unknown>>;
}

export interface SectionSpec {
  key: string;
  title: string;
  fields?: readonly FieldSpec[];
  list?: ListSpec;
}

const form = ["block", "cube", "crushed", "jug", "gel pack", "eutectic pack", "dry ice"] as const;
const place = [
  "cabin",
  "closed car",
  "trunk",
  "truck bed",
  "roof",
  "raft",
  "boat",
  "tent",
  "indoors",
  "camp",
] as const;
const ground = ["soil", "sand", "grass", "rock", "snow", "carpet", "boards", "water"] as const;

export const sections: readonly SectionSpec[] = [
  {
    key: "who",
    title: "Who and when",
    fields: [
      { path: "title", label: "Name of the trip", kind: "text" },
      { path: "depart", label: "Leave home", kind: "moment" },
      { path: "return", label: "Back home", kind: "moment" },
      { path: "party.adults", label: "Adults", kind: "whole" },
      { path: "party.children", label: "Children", kind: "whole" },
      {
        path: "party.vulnerable",
        label: "A baby, someone pregnant, over 65 or with weak immunity eats with us",
        kind: "yes",
      },
      { path: "limit", label: "Food limit", kind: "choice", choices: ["consumer", "inspected"] },
      { path: "confidence", label: "How sure it must be", hint: "90 %", kind: "text" },
      { path: "meals.breakfast", label: "Breakfast at", kind: "clock" },
      { path: "meals.lunch", label: "Lunch at", kind: "clock" },
      { path: "meals.dinner", label: "Dinner at", kind: "clock" },
    ],
  },
  {
    key: "place",
    title: "Where",
    fields: [
      { path: "place.latitude", label: "Latitude, north positive", hint: "38.6", kind: "number" },
      { path: "place.longitude", label: "Longitude, east positive", hint: "-109.6", kind: "number" },
      { path: "place.elevation", label: "Elevation", hint: "1250 m", kind: "text" },
      { path: "place.timezone", label: "Time zone", hint: "America/Denver", kind: "text" },
    ],
  },
  {
    key: "weather",
    title: "Weather, day by day",
    list: {
      path: "weather.days",
      one: "day",
      fields: [
        { path: "high", label: "Hottest", hint: "34 C", kind: "text" },
        { path: "low", label: "Coldest", hint: "15 C", kind: "text" },
        { path: "humidity", label: "Humidity", hint: "40 %", kind: "text" },
        { path: "cloud", label: "Cloud", hint: "20 %", kind: "text" },
        { path: "wind", label: "Wind", hint: "2 m/s", kind: "text" },
      ],
      fresh: {},
    },
  },
  {
    key: "legs",
    title: "Where the coolers stand",
    list: {
      path: "legs",
      one: "stay",
      fields: [
        { path: "where", label: "Where", kind: "choice", choices: place },
        { path: "until", label: "Until", hint: "day 1 12:00", kind: "text" },
        { path: "shade", label: "Shade", hint: "80 %", kind: "text" },
        { path: "ground", label: "On", kind: "choice", choices: ground },
      ],
      more: [
        { path: "air", label: "Air there, if measured", hint: "30 C", kind: "text" },
        { path: "water", label: "Water under it", hint: "18 C", kind: "text" },
        { path: "air changes", label: "Air changes an hour", kind: "number" },
      ],
      fresh: { where: "camp" },
    },
  },
  {
    key: "coolers",
    title: "Coolers",
    list: {
      path: "coolers",
      one: "cooler",
      fields: [
        { path: "name", label: "Name", kind: "text" },
        { path: "size", label: "Room inside", hint: "65 qt", kind: "text" },
        {
          path: "build",
          label: "Build",
          kind: "choice",
          choices: ["soft", "foam", "thin", "standard", "thick", "vacuum", "icebox"],
        },
        { path: "holds", label: "For", kind: "choice", choices: ["food", "drinks", "any"] },
        { path: "openings.per day", label: "Openings a day", kind: "number" },
        { path: "drain", label: "Meltwater", kind: "choice", choices: ["keep", "daily", "open"] },
      ],
      more: [
        { path: "color", label: "Colour", kind: "choice", choices: ["white", "light", "medium", "dark"] },
        { path: "sealed until", label: "Sealed until", hint: "day 3 dinner", kind: "text" },
        { path: "openings.for", label: "Each opening lasts", hint: "20 s", kind: "text" },
        { path: "openings.from", label: "First opening at", kind: "clock" },
        { path: "openings.to", label: "Last opening at", kind: "clock" },
        { path: "start.kept", label: "Kept before packing at", hint: "24 C", kind: "text" },
        { path: "conductance", label: "Conductance from a test", hint: "0.62 W/K", kind: "text" },
        { path: "weight", label: "Weight when empty", hint: "13 kg", kind: "text" },
        {
          path: "cover",
          label: "Over it",
          kind: "choice",
          choices: ["none", "wet cloth", "reflective", "blanket", "wet cloth inside"],
        },
        {
          path: "top",
          label: "On top, inside",
          kind: "choice",
          choices: ["none", "foam sheet", "cold packs"],
        },
      ],
      fresh: { name: "new cooler", size: "50 L" },
    },
  },
  {
    key: "food",
    title: "Food and drinks",
    list: {
      path: "food",
      one: "food",
      fields: [
        { path: "name", label: "What", kind: "text" },
        { path: "amount", label: "Amount", hint: "1 kg", kind: "text" },
        { path: "like", label: "It is like", kind: "food" },
        { path: "eat", label: "Eaten", hint: "day 2 dinner", kind: "text" },
        { path: "in", label: "In", kind: "cooler" },
      ],
      more: [
        { path: "per person", label: "Per person instead of an amount", hint: "200 g", kind: "text" },
        { path: "count", label: "Pieces", kind: "whole" },
        { path: "each", label: "Each piece", hint: "330 mL", kind: "text" },
        {
          path: "state",
          label: "Packed",
          kind: "choice",
          choices: ["frozen", "chilled", "ambient", "dry"],
        },
        { path: "raw", label: "Raw", kind: "yes" },
        { path: "at", label: "Temperature at packing", hint: "4 C", kind: "text" },
        { path: "thick", label: "Thickness", hint: "30 mm", kind: "text" },
        { path: "watertight", label: "Watertight", kind: "yes" },
        { path: "vacuum packed", label: "Vacuum packed", kind: "yes" },
        { path: "days old", label: "Days in the cold before", kind: "whole" },
        { path: "warm before", label: "Warm before packing for", hint: "45 min", kind: "text" },
        { path: "for", label: "Only for the diet", kind: "text" },
        { path: "not for", label: "Not for the diet", kind: "text" },
        { path: "price", label: "Price", kind: "number" },
      ],
      fresh: { name: "new food", amount: "1 kg" },
    },
  },
  {
    key: "ice",
    title: "Ice you have already",
    list: {
      path: "ice",
      one: "lot of ice",
      fields: [
        { path: "form", label: "Form", kind: "choice", choices: form },
        { path: "pieces", label: "Pieces", kind: "whole" },
        { path: "each", label: "Each", hint: "10 lb", kind: "text" },
        { path: "at", label: "Temperature", hint: "-2 C", kind: "text" },
        { path: "in", label: "In", kind: "cooler" },
        { path: "layer", label: "Where in it", kind: "choice", choices: ["base", "fill", "top"] },
      ],
      fresh: { form: "cube", pieces: 1, each: "10 lb" },
    },
  },
  {
    key: "supply",
    title: "Ice you can get",
    list: {
      path: "supply",
      one: "supply",
      fields: [
        { path: "form", label: "Form", kind: "choice", choices: form },
        { path: "each", label: "Each", hint: "10 lb", kind: "text" },
        { path: "where", label: "Where", hint: "home", kind: "text" },
        { path: "price", label: "Price", kind: "number" },
        { path: "at", label: "Temperature", hint: "-2 C", kind: "text" },
        { path: "max", label: "Most pieces", kind: "whole" },
      ],
      more: [
        { path: "when", label: "On the way, at", hint: "day 3 09:00", kind: "text" },
        { path: "open", label: "Open", hint: "08:00-18:00", kind: "text" },
        { path: "away", label: "Way there", hint: "30 min", kind: "text" },
        { path: "chance", label: "Chance that it has some", hint: "80 %", kind: "text" },
      ],
      fresh: { form: "cube", each: "10 lb", where: "shop" },
    },
  },
  {
    key: "home",
    title: "Freezer and carrying",
    fields: [
      { path: "freezer.space", label: "Room in the freezer at home", hint: "30 L", kind: "text" },
      { path: "freezer.at", label: "The freezer is at", hint: "-18 C", kind: "text" },
      { path: "carry.people", label: "People who lift a cooler", kind: "whole" },
    ],
  },
];
