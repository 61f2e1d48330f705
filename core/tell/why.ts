import { sum } from "d3-array";
import { tripPriors } from "../ensemble/priors.ts";
import type { AssumedResult } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { pieceWords } from "../plan/pieceWords.ts";
import { massWords } from "../quantity/show.ts";
import type { TripIce } from "../trip/types.ts";
import { assumptionWords } from "./assumedText.ts";
import { coldSpent, largestSaving } from "./cold.ts";
import { adviceOf, mainDoubts } from "./doubtsText.ts";
import { byUrgency } from "./foodText.ts";
import { inHundred } from "./gainWords.ts";
import { roundToSum } from "./numbers.ts";
import { eachWords } from "./shoppingText.ts";
import { iceAmount, iceUnit, type TextOptions, type Voice, voiceFor } from "./voice.ts";
import { nameWords, ONE_RUN, printable } from "./words.ts";

/** Why a number is what it is, in sentences; a list that stays empty is not told. */
export interface Why {
  /** The sum that makes it; what is shown adds up. */
  sum: string[];
  /** Its range alone, fit to stand beside the number: "50 to 56 lb"; empty where the number carries it or has none. */
  between: string;
  /** What the range is worth, and what makes it. */
  range: string;
  /** What it rests on that nobody said. */
  rests: string[];
  /** What would change it most; empty: nothing that is worth a word. */
  saving: string;
  /** Keys of `core/sources.json`. */
  sources: string[];
}

/** Why each number of a plan is what it is. Lists by cooler are in the trip's order. */
export interface PlanWhys {
  food: Why;
  ice: Why;
  cost: Why;
  ends: Why[];
  weights: Why[];
  filled: Why[];
}

/** Effects below this are not told, hours. */
const LEAST_h = 0.5;
const MOST = 3;

/**
 * Why the numbers of a plan are what they are: the sum, the range, what it rests on, the largest saving, the sources.
 * Every sum is rounded so that what is shown adds up.
 *
 * @param forecast of a plan: `result.plan` is filled in
 */
export function whysOf(forecast: Forecast, options: TextOptions): PlanWhys {
  const voice = voiceFor(forecast, options);
  const each = (why: (forecast: Forecast, index: number, voice: Voice) => Why): Why[] =>
    forecast.trip.coolers.map((_, i) => why(forecast, i, voice));
  return {
    food: foodWhy(forecast, voice),
    ice: iceWhy(forecast, voice),
    cost: costWhy(forecast),
    ends: each(endWhy),
    weights: each(weightWhy),
    filled: each(filledWhy),
  };
}

/** "19.0 lb = 7.6 walls + 2.1 lid − 0.4 frozen food": parts that add up, largest first, what is nothing left out. */
function addition(names: readonly string[], values: readonly number[], unit: string, total = unit): string {
  const { parts, total: whole } = roundToSum(values, 1);
  const terms = parts
    .map((value, i) => ({ value, name: names[i]! }))
    .filter(({ value }) => value !== 0)
    .map(({ value, name }, i) => {
      const sign = value < 0 ? "− " : i === 0 ? "" : "+ ";
      return `${sign}${Math.abs(value).toFixed(1)} ${name}`;
    });
  const shown = whole.toFixed(1).replace("-", "−");
  return terms.length === 0 ? `${shown} ${total}` : `${shown} ${total} = ${terms.join(" ")}`;
}

/** How many runs a range is made of, and how many of them it holds. */
function runsWords({ result }: Forecast, voice: Voice): string {
  if (voice.middle) return `${ONE_RUN}.`;
  return `Of ${result.ensemble?.members ?? 1} runs, eight in ten are within the range.`;
}

/** The assumptions that move the end of the ice most: all, or those of one cooler and of no other. */
function restsOn({ trip, result }: Forecast, voice: Voice, index: number | null = null): string[] {
  const isOfOther = ({ path }: AssumedResult): boolean =>
    index !== null && path.startsWith("coolers[") && !path.startsWith(`coolers[${index}]`);
  const own = result.assumed.filter((one) => !isOfOther(one));
  const moving = own
    .filter(({ effect_h }) => Math.abs(effect_h ?? 0) >= LEAST_h)
    .sort((a, b) => Math.abs(b.effect_h!) - Math.abs(a.effect_h!))
    .slice(0, MOST)
    .map((one) => assumptionWords(one, trip, voice.units));
  if (own.length === 0) return ["Nothing was assumed for it."];
  if (moving.length > 0) return moving;
  return [
    `${own.length} assumed ${own.length === 1 ? "thing" : "things"}, none of which moves it by half an hour.`,
  ];
}

/** Where the cold goes by account, and the laws and figures behind each. */
const COLD_SOURCES = [
  "handbook-ice",
  "langmuir-1913",
  "ashrae-fundamentals",
  "parton-logan-1981",
  "haurwitz-1945",
  "choi-okos-1986",
  "engineering-judgement",
] as const;

function savingWords(forecast: Forecast, index: number): string {
  const saving = largestSaving(forecast, index);
  return saving === null ? "" : `The largest part is ${saving}`;
}

/** Why the ice of one cooler ends when it does. */
function endWhy(forecast: Forecast, index: number, voice: Voice): Why {
  const cooler = forecast.result.coolers[index]!;
  const spent = coldSpent(forecast, index, voice.units);
  const unit = `${iceUnit(voice.units)} of ice a day`;
  const perDay = spent.parts.map(({ ice_kg }) => iceAmount(ice_kg / (spent.span_days || 1), voice.units));
  const names = spent.parts.map(({ name }) => name);
  const frozen =
    cooler.frozenFoodAsIce_kg > 0
      ? ` Frozen food counts as ${massWords(cooler.frozenFoodAsIce_kg, voice.units)} of ice more.`
      : "";
  const doubts = mainDoubts(cooler);
  const advice = doubts.map(adviceOf).find((words) => words !== null);
  return {
    sum:
      spent.span_days === 0
        ? ["There is no ice in it."]
        : [`It uses ${addition(names, perDay, unit)}, in the likely case.${frozen}`],
    between: "",
    range: [
      runsWords(forecast, voice),
      ...(doubts.length === 0
        ? []
        : [
            `Its range is mostly: ${doubts.map(({ about, share_frac }) => `${printable(about)} ${Math.round(share_frac * 100)} %`).join(", ")}.`,
          ]),
      ...(advice === undefined ? [] : [`To narrow it: ${advice}.`]),
    ].join(" "),
    rests: restsOn(forecast, voice, index),
    saving: savingWords(forecast, index),
    sources: spent.span_days === 0 ? [] : [...COLD_SOURCES],
  };
}

const isLoose = ({ form }: Pick<TripIce, "form">): boolean => form === "cube" || form === "crushed";

/** What ice weighs in all where every piece of it runs light, and where every piece runs heavy, kg. */
function iceSpread_kg(lots: readonly TripIce[]): [low_kg: number, high_kg: number] {
  const of = (end: "p10" | "p90"): number =>
    sum(lots, (lot) => {
      const prior = isLoose(lot) ? tripPriors.bagWeight_frac : tripPriors.pieceWeight_frac;
      return lot.mass_kg * prior[end];
    });
  return [of("p10"), of("p90")];
}

const percent = (share_frac: number): string => String(Math.round(share_frac * 100));

/** A weight with ice in it, `beside_kg` of it as sure as it was said. */
function weightRange(
  lots: readonly TripIce[],
  beside_kg: number,
  voice: Voice,
): Pick<Why, "between" | "range"> {
  if (lots.length === 0) return { between: "", range: "As you said it, without a range." };
  const { bagWeight_frac: bag, pieceWeight_frac: piece } = tripPriors;
  const [low, high] = iceSpread_kg(lots).map((kg) => massWords(beside_kg + kg, voice.units));
  return {
    between: low === high ? `${low}, hardly any range` : `${low} to ${high}`,
    range: `If all of it runs light or heavy at once: bags of loose ice weigh ${percent(bag.p10)} to ${percent(bag.p90)} % of what is printed on them, blocks, jugs and packs ${percent(piece.p10)} to ${percent(piece.p90)} %.`,
  };
}

const aboard = ({ putIn_s }: { putIn_s: number | null }): boolean => putIn_s === null;

/** Why so much ice: the pieces that make the weight, and what they are there for. */
function iceWhy(forecast: Forecast, voice: Voice): Why {
  const { trip, result } = forecast;
  const plan = result.plan!;
  const pieces = plan.ice.map((piece) => {
    const what = pieceWords(piece.pieces, printable(eachWords(piece, trip, voice)), piece.form);
    return `${what} in ${printable(piece.cooler)}`;
  });
  const masses = plan.ice.map(({ weight_kg }) => iceAmount(weight_kg, voice.units));
  const largest = result.coolers
    .map(({ heat_kJ }, i) => ({ i, heat_kJ: heat_kJ.sides + heat_kJ.lid + heat_kJ.base }))
    .sort((a, b) => b.heat_kJ - a.heat_kJ)[0]!.i;
  return {
    sum: [
      `${addition(
        pieces.map((what) => `(${what})`),
        masses,
        iceUnit(voice.units),
      )}.`,
      "It is the least of what can be had with which the food keeps within its limit as surely as you asked.",
    ],
    ...weightRange(trip.ice.filter(aboard), 0, voice),
    rests: restsOn(forecast, voice),
    saving: `${printable(result.coolers[largest]!.name)}: ${savingWords(forecast, largest)}`,
    sources: ["handbook-ice", "common-practice", "engineering-judgement"],
  };
}

function costWhy({ trip, result }: Forecast): Why {
  const plan = result.plan!;
  const priced = plan.ice.filter(({ price }) => price !== null);
  const shown = roundToSum(
    priced.map(({ price }) => price!),
    2,
  );
  const terms = priced.map(({ form, pieces }, i) => `${shown.parts[i]!.toFixed(2)} for ${pieces} × ${form}`);
  const later = trip.ice.filter((lot) => !aboard(lot) && lot.price !== null);
  const then = sum(later, ({ price, pieces }) => price! * pieces);
  return {
    sum: [
      terms.length === 0 ? "No price is given." : `${shown.total.toFixed(2)} = ${terms.join(" + ")}.`,
      ...(then > 0 ? [`On the way another ${then.toFixed(2)}.`] : []),
    ],
    between: "",
    range: "Prices as you gave them, without a range.",
    rests:
      plan.budget.unpriced.length === 0 ? [] : [`Without a price: ${nameWords(plan.budget.unpriced, 6)}.`],
    saving: "",
    sources: [],
  };
}

/** Why one packed cooler weighs so much. */
function weightWhy({ trip, result }: Forecast, index: number, voice: Voice): Why {
  const lots = trip.ice.filter((lot) => aboard(lot) && lot.cooler === index);
  const ice_kg = sum(lots, ({ mass_kg }) => mass_kg);
  const food_kg = sum(
    trip.food.filter((food) => aboard(food) && food.cooler === index),
    ({ mass_kg }) => mass_kg,
  );
  const total_kg = result.coolers[index]!.packedWeight_kg;
  const empty_kg = total_kg - ice_kg - food_kg;
  const kg = [empty_kg, food_kg, ice_kg];
  const amounts = kg.map((mass_kg) => iceAmount(mass_kg, voice.units));
  return {
    sum: [`${addition(["the cooler itself", "food and drink", "ice"], amounts, iceUnit(voice.units))}.`],
    ...weightRange(lots, total_kg - ice_kg, voice),
    rests: result.assumed.some(({ path }) => path === `coolers[${index}].weight`)
      ? ["The weight of the empty cooler, which you did not say."]
      : [],
    saving: "Ice is the heaviest part that could stay at home; carried apart, it is lifted apart.",
    sources: ["common-practice", "niosh-94-110"],
  };
}

function filledWhy({ result }: Forecast, index: number): Why {
  const cooler = result.coolers[index]!;
  const ratio = cooler.iceToLoad_ratio;
  return {
    sum: [
      "The highest that the stack stands on the whole trip, with the water over it, of the height inside.",
      ...(ratio === null
        ? []
        : [`Ice to food by volume: ${ratio.toFixed(1)} to 1, frozen food counted as ice.`]),
    ],
    between: "",
    range: "The middle case, without a range: loose things are taken to lie as they usually do.",
    rests: [],
    saving: "",
    sources: ["engineering-judgement"],
  };
}

/** Words of one rule stand beside the food itself; here is what the count rests on. */
function foodWhy(forecast: Forecast, voice: Voice): Why {
  const { result, trip } = forecast;
  const rows = byUrgency(result.food);
  const told = (["discard", "eat next", "keep"] as const).flatMap((verdict) => {
    const these = rows.filter((food) => food.verdict === verdict);
    if (these.length === 0) return [];
    return [
      `${these.length} ${verdict}: ${nameWords(
        these.map(({ name }) => name),
        6,
      )}`,
    ];
  });
  const often = rows
    .filter(({ overLimit_frac }) => (overLimit_frac ?? 0) > 0)
    .sort((a, b) => b.overLimit_frac! - a.overLimit_frac!)
    .slice(0, MOST)
    .map(({ name, overLimit_frac }) => `${printable(name)} (${inHundred(overLimit_frac!)})`);
  const about = new Set(
    result.assumed
      .filter(({ path }) => path.startsWith("food["))
      .map(({ path }) => path.replace(/^.*\]\./, "")),
  );
  return {
    sum: [`${rows.length} to watch: ${told.length === 0 ? "none" : told.join("; ")}.`],
    between: "",
    range: voice.middle
      ? `${ONE_RUN}.`
      : `Judged so that it holds in ${Math.round(trip.confidence_frac * 100)} of 100 runs. Over its limit before it is eaten: ${often.length === 0 ? "none in any run" : `${often.join(", ")}`}.`,
    rests:
      about.size === 0
        ? []
        : [
            `Of the food you did not say: ${[...about].sort().join(", ")}. What is left open is taken strictly.`,
          ],
    saving: rows.some(({ verdict }) => verdict !== "keep")
      ? "Eat first what stands first, or give it more cold; what its rule says stands below."
      : "",
    sources: ["fsis-food-safety", "fda-food-code-2022", "public-outage-charts", "public-cold-storage-chart"],
  };
}
