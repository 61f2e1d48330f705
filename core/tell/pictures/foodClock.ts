import { pairs } from "d3-array";
import type { Band, FoodResult } from "../../forecast/result.ts";
import type { Forecast } from "../../forecast/types.ts";
import { temperatureWords } from "../../quantity/show.ts";
import type { UnitSystem } from "../../quantity/units.ts";
import type { Verdict } from "../../safety/verdict.ts";
import {
  aboardFrom_h,
  type Bite,
  bitesOf,
  coldBy_h,
  endOf_h,
  foodStory,
  isKeptSolid,
  warmUntil_h,
} from "../foodStory.ts";
import { byUrgency, foodAnswer, isShown } from "../foodText.ts";
import { voiceFor } from "../voice.ts";
import { clockOf, ONE_RUN, type TripClock } from "../words.ts";
import {
  nightColumns,
  RULER_PX,
  reckonedMoment,
  ruler,
  shortMoment,
  type TimeScale,
  timeScale,
} from "./marks.ts";
import {
  box,
  checkOptions,
  fitted,
  line,
  type PictureOptions,
  picture,
  tag,
  textWidth_px,
  words,
  wrapped,
} from "./svg.ts";
import { textureFill, textures } from "./texture.ts";

/** One perishable on the ruler. Times in hours from departure. */
export interface FoodClockRow {
  name: string;
  verdict: Verdict;
  /** From when it is aboard. */
  aboard_h: number;
  /** Came aboard warm and is under the limit from here; null: was cold when it came, or likely never is. */
  coldBy_h: Band | null;
  neverCold: boolean;
  /** One in ten comes under it all the same. */
  mayBeCold: boolean;
  /** When it is over its limit, or soft where it is kept solid. */
  ends_h: FoodResult["overLimit_h"];
  keptSolid: boolean;
  /** What tells against it first. */
  bite: Bite | null;
  /** Eaten, or the return. */
  end_h: number;
  eaten: boolean;
  says: Readonly<Record<UnitSystem, string>>;
}

export interface FoodClockData {
  clock: TripClock;
  middle: boolean;
  limit_C: number;
  nights_h: readonly (readonly [number, number])[];
  rows: readonly FoodClockRow[];
  answer: Readonly<Record<UnitSystem, string>>;
  noClock: readonly string[];
}

/** What `foodClock` draws of a forecast: all perishables, the most urgent first. */
export function foodClockData(forecast: Forecast): FoodClockData {
  const voices = { us: voiceFor(forecast, { units: "us" }), metric: voiceFor(forecast, { units: "metric" }) };
  const { trip, result } = forecast;
  const rows = byUrgency(result.food).map((food) => ({
    name: food.name,
    verdict: food.verdict,
    aboard_h: aboardFrom_h(food, forecast),
    coldBy_h: warmUntil_h(food, forecast) === null ? null : food.belowLimit_h,
    neverCold: food.belowLimit_h.p50 === null && !isKeptSolid(food, forecast),
    mayBeCold: food.belowLimit_h.p10 !== null,
    ends_h: endOf_h(food, forecast),
    keptSolid: isKeptSolid(food, forecast),
    bite: bitesOf(food, forecast)[0] ?? null,
    end_h: food.eaten_h ?? result.trip.hours,
    eaten: food.eaten_h !== null,
    says: { us: foodStory(food, forecast, voices.us), metric: foodStory(food, forecast, voices.metric) },
  }));
  return {
    clock: clockOf(trip),
    middle: voices.us.middle,
    limit_C: result.limit.limit_C,
    nights_h: forecast.nights_h,
    rows,
    answer: { us: foodAnswer(forecast, voices.us), metric: foodAnswer(forecast, voices.metric) },
    noClock: result.food.filter((food) => !isShown(food)).map((food) => food.name),
  };
}

const EDGE = 14;
const TOKEN_PX = 22;
const BAR_PX = 12;
const LINE_PX = 15;

/**
 * How long each perishable stays within its limit: a row a food on the trip's ruler, from departure until it is eaten.
 * Solid is within the limit nine times in ten, hatched likely, dotted with luck; an open frame is
 * from the first moment over the limit on, or before a warm food comes under it.
 *
 * @throws DomainError for a width outside 320…1600 or an id that is no plain word
 */
export function foodClock(data: FoodClockData, options: PictureOptions): string {
  checkOptions(options);
  const { width, units, id } = options;
  const wide = width >= 600;
  const x = timeScale(data.clock, wide ? 340 : EDGE, width - EDGE);
  const room = width - 2 * EDGE;
  const answer = wrapped(data.answer[units], room, 13, 3);
  const top = 34 + answer.length * 17 + 8;
  let bottom = top;
  const rows = data.rows.map((row) => {
    const drawn = drawRow(row, data, options, x, bottom);
    bottom += drawn.height;
    return drawn.svg;
  });
  bottom += 4;
  const noClock =
    data.noClock.length === 0 ? [] : wrapped(`Keeps without cold: ${data.noClock.join(" · ")}.`, room, 12, 2);
  const key = wrapped(keyWords(data, units), room, 12, 4);
  const keyTop = bottom + RULER_PX + 18;
  const content = [
    data.rows.length === 0 ? "" : nightColumns(x, data.nights_h, top, bottom, id),
    words(`Cold food, limit ${temperatureWords(data.limit_C, units)}`, EDGE, 20, { size: 15, bold: true }),
    ...answer.map((text, i) => words(text, EDGE, 39 + i * 17, { size: 13, fill: "ink2" })),
    ...rows,
    ruler(x, data.clock, bottom),
    ...[...key, ...noClock].map((text, i) => words(text, EDGE, keyTop + i * 16, { fill: "ink2" })),
  ];
  const height = keyTop + (key.length + noClock.length) * 16 - 4;
  const desc = data.rows.map((row) => `${row.verdict}: ${row.name}, ${row.says[units]}.`).join(" ");
  return picture(
    options,
    height,
    { title: data.answer[units], desc },
    textures(id, "likely", "luck", "night"),
    content.join(""),
  );
}

function keyWords({ middle, limit_C, rows }: FoodClockData, units: UnitSystem): string {
  const limit = temperatureWords(limit_C, units);
  const soft = rows.some((row) => row.keptSolid) ? ", or soft" : "";
  const over = `A bare frame: not yet under it, or from its first moment over it on${soft}. Upright stroke: eaten.`;
  const wet = rows.some((row) => row.bite?.kind === "meltwater")
    ? " A full bar beside a struck box was cold but lay in meltwater."
    : "";
  if (middle) return `Solid: under ${limit}. ${over}${wet} ${ONE_RUN}.`;
  return `Under ${limit}: solid 9 in 10, hatched likely, dotted 1 in 10. ${over}${wet}`;
}

/** Draws a row with its top at `y`; one whose words take two lines is higher. */
function drawRow(
  row: FoodClockRow,
  data: FoodClockData,
  options: PictureOptions,
  x: TimeScale,
  y: number,
): { svg: string; height: number } {
  const wide = options.width >= 600;
  const room = (wide ? 326 : options.width - EDGE) - EDGE - TOKEN_PX - 8;
  const told = wrapped(rowWords(row, data, options.units), room, 12, 3);
  const more = (told.length - 1) * LINE_PX;
  const barTop = wide ? y + 12 : y + 40 + more;
  const left = EDGE + TOKEN_PX + 8;
  const verdict = `: ${row.verdict}`;
  const name = fitted(row.name, room - textWidth_px(verdict, 13, true), 13, true) + verdict;
  const svg = [
    token(row.verdict, EDGE, y + 4),
    words(name, left, y + 15, { size: 13, bold: true, halo: true }),
    ...told.map((text, i) => words(text, left, y + 31 + i * LINE_PX, { fill: "ink2", halo: true })),
    bars(row, data, options, x, barTop),
  ].join("");
  return { svg, height: (wide ? 44 : 60) + more };
}

/** The words of a row: what tells against it, else until when it is under its limit. */
function rowWords(row: FoodClockRow, { clock, middle, limit_C }: FoodClockData, units: UnitSystem): string {
  const limit = temperatureWords(limit_C, units);
  const meal = row.eaten ? `; meal ${shortMoment(row.end_h, clock)}` : "";
  const { bite, ends_h, coldBy_h: cold } = row;
  const at = (t_h: number | null): string =>
    t_h === null ? "past the end" : reckonedMoment(Math.max(t_h, row.aboard_h), clock);
  const range = ({ p10, p90 }: Band): string => (middle ? "" : ` (${at(p10)} to ${at(p90)})`);
  const from = (t_h: number): string => (t_h - row.aboard_h < 0.5 ? "from the start" : `from ${at(t_h)}`);
  if (bite?.kind === "meltwater") return `in meltwater ${from(bite.from_h)}${range(bite.band)}${meal}`;
  if (bite?.kind === "soft") return `soft ${from(bite.from_h)}${range(bite.band)}${meal}`;
  if (row.neverCold) return `${row.mayBeCold ? "likely " : ""}never under ${limit}${meal}`;
  if (ends_h.p10 !== null && ends_h.p50 === null)
    return `likely not over ${limit}, could be ${from(ends_h.p10)}${meal}`;
  if (ends_h.p10 !== null) return `over ${limit} ${from(ends_h.p50!)}${range(ends_h)}${meal}`;
  const until = row.eaten ? `until eaten, ${shortMoment(row.end_h, clock)}` : "to the return";
  if (row.keptSolid) return `solid ${until}`;
  if (cold?.p50 == null) return `under ${limit} ${until}`;
  const by = (t_h: number | null): string =>
    t_h === null ? "past the end" : shortMoment(coldBy_h(t_h, { clock }), clock);
  const could = middle ? "" : ` (${by(cold.p10)} to ${by(cold.p90)})`;
  return `over ${limit} to ${by(cold.p50)}${could}${meal}`;
}

function bars(
  row: FoodClockRow,
  { clock, middle }: FoodClockData,
  { id }: PictureOptions,
  x: TimeScale,
  y: number,
): string {
  const end = Math.min(row.end_h, clock.length_h);
  const aboard = Math.min(row.aboard_h, end);
  const cold = row.coldBy_h ?? { p10: aboard, p50: aboard, p90: aboard };
  const ends = middle ? { p10: row.ends_h.p50, p50: row.ends_h.p50, p90: row.ends_h.p50 } : row.ends_h;
  const cut = (t_h: number | null): number => Math.min(Math.max(t_h ?? end, aboard), end);
  const moments = [aboard, ...Object.values(cold).map(cut), ...Object.values(ends).map(cut), end];
  const cuts = [...new Set(moments)].sort((a, b) => a - b);
  const isUnder = (from: number, to: number, first: number | null, last: number | null): boolean =>
    !row.neverCold && from >= cut(first) && to <= cut(last);
  // Where a food that came aboard warm may be over its limit again before it surely was under it, the worse is drawn.
  const fillOf = (from: number, to: number): string => {
    if (isUnder(from, to, cold.p90, ends.p10)) return "sure";
    if (isUnder(from, to, cold.p50, ends.p50)) return textureFill("likely", id);
    return isUnder(from, to, cold.p10, ends.p90) ? textureFill("luck", id) : "heatFill";
  };
  const spans: { from: number; to: number; fill: string }[] = [];
  for (const [from, to] of pairs(cuts)) {
    const fill = fillOf(from, to);
    const last = spans.at(-1);
    if (last?.fill === fill) last.to = to;
    else spans.push({ from, to, fill });
  }
  const parts = spans.map(({ from, to, fill }) => {
    const isOver = fill === "heatFill";
    return box(x(from), y, x(to), y + BAR_PX, fill, isOver ? "heat" : "sure", isOver ? 1.6 : 1);
  });
  return parts.join("") + (row.eaten ? line(x(end), y - 4, x(end), y + BAR_PX + 4, "ink", 2.4) : "");
}

/** Keep: a box with its lid line. Eat next: a box with a bite out. Discard: a filled box struck through. */
function token(verdict: Verdict, x: number, y: number): string {
  const s = TOKEN_PX;
  if (verdict === "discard") {
    const cross = tag("path", {
      d: `M${x + 6},${y + 6}l${s - 12},${s - 12}m0,${12 - s}l${12 - s},${s - 12}`,
      fill: "none",
      stroke: "var(--sheet)",
      "stroke-width": 2.4,
    });
    return box(x, y, x + s, y + s, "ink") + cross;
  }
  if (verdict === "eat next") {
    const d = `M${x + 1},${y + 1}h10a6,6 0 0 0 5,8a6,6 0 0 0 ${s - 18},1v${s - 11}h${2 - s}Z`;
    return tag("path", { d, fill: "var(--eatFill)", stroke: "var(--eat)", "stroke-width": 2.4 });
  }
  const lid = line(x + 1, y + 8, x + s - 1, y + 8, "sure", 2.4);
  return box(x + 1, y + 1, x + s - 1, y + s - 1, "sheet", "sure", 2.4) + lid;
}
