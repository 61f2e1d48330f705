import { bisectRight, max, maxIndex } from "d3-array";
import type { Band, CoolerResult, FoodResult } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { temperatureWords } from "../quantity/show.ts";
import { aboardFrom_h, coldByWords, isKeptSolid, itemOf, neverWords, warmUntil_h } from "./foodStory.ts";
import type { Voice } from "./voice.ts";
import { dayPart, fromWords, nameWords, spanWords } from "./words.ts";

/** Over the limit so soon after it came aboard that it was never held under it. */
const AT_ONCE_h = 1;

/** "galley: ice until day 4 evening; perishables stay under 40 °F to the return." */
export function coolerSentence(forecast: Forecast, index: number, voice: Voice): string {
  const { name } = forecast.result.coolers[index]!;
  const parts = [...iceWords(forecast, index, voice), ...foodWords(forecast, index, voice)];
  return `${nameWords([name])}: ${parts.join("; ")}.${hintWords(forecast, index)}`;
}

/** Whether water ice or packs are ever put into a cooler; frost beside dry ice is none. */
export function hasIce({ trip }: Forecast, index: number): boolean {
  const from = new Set([index]);
  for (let before = 0; before < from.size; ) {
    before = from.size;
    for (const event of trip.events) if (event.do === "merge" && from.has(event.into)) from.add(event.from);
  }
  return trip.ice.some(({ cooler, form }) => from.has(cooler) && form !== "dry ice");
}

/** When the dry ice of a cooler is gone, hours; an end of null: there is some at the return; undefined: there never was any. */
export function dryIceOut_h({ series }: CoolerResult): Band | undefined {
  const most_kg = max(series.dryIce_kg.p50) ?? 0;
  if (most_kg <= 0) return undefined;
  // What only ever shrinks is gone earliest where least of it is left.
  const gone_h = (left_kg: readonly number[]): number | null =>
    series.t_h[left_kg.findLastIndex((kg) => kg > 0.01 * most_kg) + 1] ?? null;
  const { p10, p50, p90 } = series.dryIce_kg;
  return { p10: gone_h(p10), p50: gone_h(p50), p90: gone_h(p90) };
}

function iceWords(forecast: Forecast, index: number, voice: Voice): string[] {
  const cooler = forecast.result.coolers[index]!;
  const words: string[] = [];
  if (!hasIce(forecast, index)) words.push("no ice packed");
  else {
    const until = `ice ${spanWords(cooler.iceOut_h, voice.clock, voice.middle)}`;
    const gaps = cooler.iceGaps_h.map(([from_h, to_h]) =>
      gapWords(dayPart(from_h, voice.clock), dayPart(to_h, voice.clock)),
    );
    const none = voice.middle ? "no ice" : "likely no ice";
    words.push(...(gaps.length === 0 ? [until] : [`${none} ${gaps.join(" and ")}`, `then ${until}`]));
  }
  const dry_h = dryIceOut_h(cooler);
  if (dry_h !== undefined) words.push(`dry ice ${spanWords(dry_h, voice.clock, voice.middle)}`);
  return words;
}

function gapWords(from: string, to: string): string {
  return from === to ? `for a while ${from}` : `from ${from} to ${to}`;
}

interface Groups {
  over: FoodResult[];
  neverCold: FoodResult[];
  cooled: FoodResult[];
  soft: FoodResult[];
  /** Warm, but of a kind that keeps. */
  keeping: FoodResult[];
}

function groupsOf(forecast: Forecast, cooler: CoolerResult): Groups & { held: FoodResult[] } {
  const here = forecast.result.food.filter((food) => food.cooler === cooler.name);
  const held = here.filter((food) => food.perishable);
  const solid = held.filter((food) => isKeptSolid(food, forecast));
  const chilled = held.filter((food) => !solid.includes(food));
  const isOver = (food: FoodResult): boolean => food.overLimit_h.p10 !== null;
  return {
    held,
    over: chilled
      .filter((food) => isOver(food) && food.belowLimit_h.p50 !== null)
      .sort((a, b) => (a.overLimit_h.p50 ?? 1e9) - (b.overLimit_h.p50 ?? 1e9)),
    neverCold: chilled.filter((food) => food.belowLimit_h.p50 === null),
    cooled: chilled.filter((food) => !isOver(food) && warmUntil_h(food, forecast) !== null),
    soft: solid.filter((food) => food.thawed_h.p10 !== null),
    keeping: here.filter((food) => {
      const like = itemOf(food, forecast)?.like;
      return !food.perishable && isOver(food) && like !== undefined && like.kind !== "drink";
    }),
  };
}

const names = (foods: readonly FoodResult[]): string =>
  nameWords(
    foods.map(({ name }) => name),
    2,
  );

function foodWords(forecast: Forecast, index: number, voice: Voice): string[] {
  const { held, over, neverCold, cooled, soft, keeping } = groupsOf(
    forecast,
    forecast.result.coolers[index]!,
  );
  const { clock, middle } = voice;
  const limit = temperatureWords(forecast.result.limit.limit_C, voice.units);
  if (held.length === 0 && keeping.length === 0) {
    const packed = forecast.trip.food.some((item) => item.cooler === index && item.like.perishable);
    return [
      packed ? "its food goes on into another cooler and is told there" : "nothing perishable packed in it",
    ];
  }
  const words: string[] = [];
  const first = over[0];
  if (first !== undefined) words.push(overWords(over, forecast, voice, limit));
  else if (held.length > neverCold.length + cooled.length + soft.length)
    words.push(`perishables stay under ${limit} ${untilWords(held)}${middle ? "" : ", nine times in ten"}`);
  if (soft[0] !== undefined) {
    const from = fromWords(soft[0].thawed_h, clock, middle);
    words.unshift(`${names(soft)} soft${from.startsWith("likely not") ? ": " : " from "}${from}`);
  }
  if (neverCold.length > 0) {
    const verb = neverWords(neverCold.find((food) => food.belowLimit_h.p10 === null) ?? neverCold[0]!);
    words.push(
      `${names(neverCold)} ${neverCold.length > 1 ? verb.replace("comes", "come") : verb} under ${limit}`,
    );
  }
  if (cooled.length > 0) {
    const last = cooled[maxIndex(cooled, (food) => warmUntil_h(food, forecast)!)]!;
    const by = coldByWords(last.belowLimit_h, warmUntil_h(last, forecast)!, voice);
    words.push(`${names(cooled)} over it at first, under it by ${by}`);
  }
  if (keeping.length > 0) words.push(`${names(keeping)} may warm, of a kind that keeps`);
  return words;
}

function untilWords(held: readonly FoodResult[]): string {
  return held.every((food) => food.eaten_h !== null) ? "until eaten" : "to the return";
}

function overWords(over: readonly FoodResult[], forecast: Forecast, voice: Voice, limit: string): string {
  const first = over[0]!;
  const first_h = first.overLimit_h.p50;
  const atOnce = over.filter(
    (food) => (food.overLimit_h.p50 ?? 1e9) - aboardFrom_h(food, forecast) < AT_ONCE_h,
  );
  const isSure = atOnce.every(
    (food) => (food.overLimit_h.p90 ?? 1e9) - aboardFrom_h(food, forecast) < AT_ONCE_h,
  );
  if (atOnce.length > 0)
    return `${names(atOnce)} ${isSure ? "" : "likely "}over ${limit} almost from the start`;
  const whose = first_h === null ? "" : `, ${names([first])} first`;
  return `perishables stay under ${limit} ${spanWords(first.overLimit_h, voice.clock, voice.middle)}${whose}`;
}

/** Much ice left while food is warm means that it lies in the wrong place. */
const MUCH_frac = 0.3;

function hintWords(forecast: Forecast, index: number): string {
  const cooler = forecast.result.coolers[index]!;
  const { over, neverCold, keeping } = groupsOf(forecast, cooler);
  const { t_h, ice_kg } = cooler.series;
  const full_kg = max(ice_kg.p50) ?? 0;
  const isTop = forecast.trip.ice.some(
    ({ cooler: at, layer, form }) => at === index && layer === "top" && form !== "dry ice",
  );
  if (!hasIce(forecast, index) || full_kg <= 0 || isTop) return "";
  const left_kg = (food: FoodResult): number => {
    const warm_h = (food.overLimit_h.p50 ?? Number.POSITIVE_INFINITY) + AT_ONCE_h;
    return Number.isFinite(warm_h) ? ice_kg.p50[Math.max(0, bisectRight(t_h, warm_h) - 1)]! : 0;
  };
  const warm = [...over, ...neverCold, ...keeping].filter((food) => left_kg(food) >= MUCH_frac * full_kg);
  if (warm.length === 0) return "";
  // Whatever number the names have: one name may be a plural.
  return ` Much ice would be left below warm ${names(warm)}: put some ice or a cold pack on top.`;
}
