import { type IceLevel, iceLevelWords, type LogEntryFile, type UnitSystem } from "../../core/index.ts";
import type { CampFacts } from "../worker/logAsks.ts";

/** What is being logged, tap by tap; an entry only once it is done. */
export interface Draft {
  cooler: string;
  act: Act | null;
  /** What was chosen so far, in the order of the steps. */
  picks: readonly string[];
  /** Where a dial stands that is not chosen yet; null: where it begins. */
  dial: number | null;
  /** Hours ago. */
  earlier_h: number;
}

export const acts = [
  "ice",
  "read",
  "added",
  "opened",
  "out",
  "in",
  "moved",
  "swamped",
  "merged into",
  "covered",
  "dumped",
] as const;
export type Act = (typeof acts)[number];

export const actWords: Readonly<Record<Act, string>> = {
  ice: "Ice left",
  read: "Thermometer",
  added: "Ice added",
  opened: "Stood open",
  out: "Taken out",
  in: "Put in",
  moved: "Moved",
  swamped: "Swamped",
  "merged into": "Emptied into",
  covered: "Cover",
  dumped: "Lost",
};

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
}

const option = (value: string, says: string = value): Option => ({ value, says });
const levels = (Object.keys(iceLevelWords) as IceLevel[]).map((level) => ({
  value: level,
  says: iceLevelWords[level],
  level,
}));
const yesNo = [option("yes", "Yes"), option("no", "No")];

/** The questions of each kind of entry, in their order. Every one of them is answered by tapping. */
export function stepsOf(draft: Draft, asking: Asking): Step[] {
  const { facts, units } = asking;
  const choose = (asks: string, options: readonly Option[]): Step => ({ kind: "choose", asks, options });
  switch (draft.act) {
    case null:
      return [];
    case "ice":
      return [choose("How much ice is left?", levels), choose("Water let out?", yesNo)];
    case "read":
      return [
        choose("What was it in?", [
          option("air", "Air under the lid"),
          option("water", "The meltwater"),
          ...itemsIn(draft.cooler, facts).map((name) => option(`item ${name}`, name)),
        ]),
        readingDial(asking),
      ];
    case "added":
      return [
        choose("What ice?", iceOptions(facts, units)),
        { kind: "dial", asks: "How many?", from: 1, step: 1, low: 1, high: 50, unit: "" },
      ];
    case "out":
      return [
        choose(
          "What was taken out?",
          itemsIn(draft.cooler, facts).map((name) => option(name)),
        ),
        choose("How much of it?", [
          option("all", "All of it"),
          option("50 %", "Half"),
          option("25 %", "A quarter"),
          option("75 %", "Three quarters"),
        ]),
      ];
    case "in":
      return putInSteps(units);
    default:
      return plainSteps(draft, facts);
  }
}

function plainSteps(draft: Draft, facts: CampFacts): Step[] {
  const choose = (asks: string, options: readonly Option[]): Step[] => [{ kind: "choose", asks, options }];
  if (draft.act === "opened")
    return choose(
      "How long did the lid stand open?",
      ["1 min", "3 min", "10 min", "30 min", "1 h", "3 h"].map((one) => option(one)),
    );
  if (draft.act === "moved")
    return choose(
      "Where is it now?",
      ["camp", "cabin", "closed car", "trunk", "truck bed", "raft", "boat", "tent", "indoors", "roof"].map(
        (one) => option(one),
      ),
    );
  if (draft.act === "merged into")
    return choose(
      "Emptied into which?",
      facts.coolers.filter((name) => name !== draft.cooler).map((one) => option(one)),
    );
  if (draft.act === "covered")
    return choose(
      "What lies over it now?",
      ["wet cloth", "reflective", "blanket", "none"].map((one) =>
        option(one, one === "none" ? "nothing" : one),
      ),
    );
  return [];
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

/** Kinds of load that come on the way, by names that the food table knows. */
const loads: readonly (readonly [like: string, says: string])[] = [
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

/** What an entry says, without who, when and which. */
type Said = Record<string, unknown>;

/** The entries that a complete draft stands for: one, or two where water was let out as well. */
export function saidBy({ cooler, act, picks }: Draft, day: number): Said[] {
  const [first = "", second = "", third = ""] = picks;
  const about = (said: Said): Said[] => [{ cooler, ...said }];
  switch (act) {
    case "ice":
      return [...about({ ice: first }), ...(second === "yes" ? about({ drained: true }) : [])];
    case "read":
      return about({ read: second, ...(first === "air" ? {} : { of: first.replace(/^item /, "") }) });
    case "added":
      return about({ added: { ...(JSON.parse(first) as object), pieces: Number(second) } });
    case "out":
      return about({ out: first, ...(second === "all" ? {} : { share: second }) });
    case "in": {
      const says = loads.find(([like]) => like === first)?.[1] ?? first;
      return about({
        in: { name: `${says.toLowerCase()}, day ${day}`, like: first, amount: second, at: third },
      });
    }
    case "swamped":
    case "dumped":
      return about({ [act]: true });
    default:
      return about({ [act!]: first });
  }
}

/** An entry out of what it says. */
export const entryOf = (said: Said, head: { id: string; at: string; by: string }): LogEntryFile =>
  ({ ...head, ...said }) as LogEntryFile;
