import { type IceLevel, iceLevelWords, type UnitSystem } from "../../core/index.ts";
import type { CampFacts } from "../worker/logAsks.ts";
import { localIso } from "./campClock.ts";
import type { Act, Draft } from "./drafts.ts";

export interface Option {
  value: string;
  says: string;
  level?: IceLevel;
}

/** One question of an entry: a choice, or a number that is dialled. */
export type Step =
  | { kind: "choose"; asks: string; options: readonly Option[] }
  | { kind: "dial"; asks: string; from: number; step: number; low: number; high: number; unit: string };

/** What steps are asked in the light of. */
export interface Asking {
  facts: CampFacts;
  units: UnitSystem;
  /** Where the thermometer likely stands, °C. */
  likely_C: number;
  /** Now: meals that are long past are not asked about. */
  now_ms: number;
}

const option = (value: string, says: string = value): Option => ({ value, says });
const levels = (Object.keys(iceLevelWords) as IceLevel[]).map((level) => ({
  value: level,
  says: iceLevelWords[level],
  level,
}));
const yesNo = [option("yes", "Yes"), option("no", "No")];

type Ask = (draft: Draft, asking: Asking) => Step[];

const choose = (asks: string, options: readonly Option[]): Step => ({ kind: "choose", asks, options });
const oneOf = (asks: string, values: readonly string[]): Step =>
  choose(
    asks,
    values.map((one) => option(one)),
  );

/** The questions of each kind of entry, in their order. Every one of them is answered by tapping. */
const asks: Readonly<Record<Act, Ask>> = {
  ice: () => [choose("How much ice is left?", levels), choose("Water let out?", yesNo)],
  read: ({ cooler }, asking) => [
    choose("What was it in?", [
      option("air", "Air under the lid"),
      option("water", "The meltwater"),
      ...itemsIn(cooler!, asking.facts).map((name) => option(`item ${name}`, name)),
    ]),
    readingDial(asking),
  ],
  drained: (_, { units }) => [
    choose("How much water came out?", [
      option("true", "Not measured"),
      ...volumes[units].map((one) => option(one)),
    ]),
  ],
  added: (_, { facts, units }) => [
    choose("What ice?", iceOptions(facts, units)),
    { kind: "dial", asks: "How many?", from: 1, step: 1, low: 1, high: 50, unit: "" },
  ],
  opened: () => [
    oneOf("How long did the lid stand open?", ["1 min", "3 min", "10 min", "30 min", "1 h", "3 h"]),
  ],
  out: ({ cooler }, { facts }) => [
    oneOf("What was taken out?", itemsIn(cooler!, facts)),
    choose("How much of it?", [
      option("all", "All of it"),
      option("50 %", "Half"),
      option("25 %", "A quarter"),
      option("75 %", "Three quarters"),
    ]),
  ],
  in: (_, { units }) => putInSteps(units),
  moved: () => [oneOf("Where is it now?", places)],
  "merged into": ({ cooler }, { facts }) => [
    oneOf(
      "Emptied into which?",
      facts.coolers.filter((name) => name !== cooler),
    ),
  ],
  covered: () => [
    choose(
      "What lies over it now?",
      ["wet cloth", "reflective", "blanket", "none"].map((one) =>
        option(one, one === "none" ? "nothing" : one),
      ),
    ),
  ],
  swamped: () => [],
  dumped: () => [],
  "none at": (_, { facts }) => [oneOf("Where was none?", facts.shops)],
  skipped: (_, asking) => [oneOf("Which meal was not eaten?", mealsAhead(asking))],
  swapped: ({ picks }, asking) => [
    oneOf("Which meal?", mealsAhead(asking)),
    oneOf(
      "With which other?",
      mealsAhead(asking).filter((name) => name !== picks[0]),
    ),
  ],
  return: (_, { facts, now_ms }) => [choose("Home when?", returns(facts, now_ms))],
};

export const stepsOf = (draft: Draft, asking: Asking): Step[] =>
  draft.act === null ? [] : asks[draft.act](draft, asking);

const places = [
  "camp",
  "cabin",
  "closed car",
  "trunk",
  "truck bed",
  "raft",
  "boat",
  "tent",
  "indoors",
  "roof",
];

const DAY_ms = 86_400_000;
const MOST_MEALS = 12;

/** Meals from yesterday on. */
const mealsAhead = ({ facts, now_ms }: Asking): string[] =>
  facts.meals
    .filter(({ at_ms }) => at_ms > now_ms - DAY_ms)
    .slice(0, MOST_MEALS)
    .map(({ name }) => name);

/** New moments of return that are still to come, each a whole number of days from the planned one. */
function returns({ return_ms, timezone }: CampFacts, now_ms: number): Option[] {
  const says = [
    [1, "A night more"],
    [2, "Two nights more"],
    [-1, "A night less"],
    [-2, "Two nights less"],
  ] as const;
  return says
    .map(([days, words]) => [return_ms + days * DAY_ms, words] as const)
    .filter(([at_ms]) => at_ms > now_ms)
    .map(([at_ms, words]) => option(localIso(at_ms, timezone).slice(0, 16), words));
}

/** Items that lie in this cooler by the file, else all that lie in none. */
function itemsIn(cooler: string, { items }: CampFacts): string[] {
  const here = items.filter((item) => item.cooler === cooler);
  return (here.length > 0 ? here : items).map(({ name }) => name);
}

function iceOptions({ ice }: CampFacts, units: UnitSystem): Option[] {
  const usual = units === "us" ? "10 lb" : "5 kg";
  const all =
    ice.length > 0
      ? ice
      : [
          { form: "cube", each: usual },
          { form: "block", each: usual },
        ];
  return all.map(({ form, each }) => ({ value: JSON.stringify({ form, each }), says: `${each} ${form}` }));
}

function readingDial({ units, likely_C }: Asking): Step {
  const isUs = units === "us";
  const from = isUs ? Math.round((likely_C * 9) / 5 + 32) : Math.round(likely_C * 2) / 2;
  const [low, high] = isUs ? [-20, 120] : [-29, 49];
  return {
    kind: "dial",
    asks: "What does it show?",
    from,
    step: isUs ? 1 : 0.5,
    low,
    high,
    unit: isUs ? "°F" : "°C",
  };
}

/** What a pot or a bottle measures of the water that is let out. */
const volumes: Readonly<Record<UnitSystem, readonly string[]>> = {
  us: ["1 qt", "2 qt", "1 gal", "1.5 gal", "2 gal", "3 gal", "4 gal"],
  metric: ["1 L", "2 L", "3 L", "5 L", "7 L", "10 L", "15 L"],
};

/** Kinds of load that come on the way, by names that the food table knows. */
export const loads: readonly (readonly [like: string, says: string])[] = [
  ["trout", "Fish"],
  ["venison", "Game"],
  ["soft drink", "Cans"],
  ["stew", "Leftovers"],
  ["milk", "Dairy"],
  ["ground beef", "Raw meat"],
];

function putInSteps(units: UnitSystem): Step[] {
  const isUs = units === "us";
  return [
    { kind: "choose", asks: "What was put in?", options: loads.map(([like, says]) => option(like, says)) },
    {
      kind: "dial",
      asks: "How much?",
      from: isUs ? 2 : 1,
      step: isUs ? 1 : 0.5,
      low: isUs ? 1 : 0.5,
      high: isUs ? 200 : 100,
      unit: isUs ? "lb" : "kg",
    },
    {
      kind: "choose",
      asks: "How warm was it?",
      options: [
        option("4 C", "Cold"),
        option("15 C", "Cool"),
        option("25 C", "As the air"),
        option("60 C", "Hot"),
      ],
    },
  ];
}

/** Whether every question has its answer. */
export const isComplete = (draft: Draft, asking: Asking): boolean =>
  draft.act !== null && draft.picks.length >= stepsOf(draft, asking).length;
