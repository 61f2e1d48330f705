import { type ScaleLinear, scaleLinear } from "d3-scale";
import type { HabitResult, HabitsResult } from "../../whatif/types.ts";
import { extentOf_h, gainHours, makesNoDifference, membersWords, NOTHING } from "../gainWords.ts";
import { placeWords } from "../habitsText.ts";
import { printable } from "../words.ts";
import { spreadMark, spreadSign } from "./spreadMark.ts";
import { box, checkOptions, fitted, line, type PictureOptions, picture, words, wrapped } from "./svg.ts";
import { textures } from "./texture.ts";

const EDGE = 14;
const LINE_PX = 15;
/** Between food and ice of one row. */
const LANE_PX = 17;
const WORDS_PX = 330;

interface Frame {
  options: PictureOptions;
  wide: boolean;
  x: ScaleLinear<number, number>;
}

/**
 * What each habit is worth on one trip, best first: food hours as a dot with its range, ice hours below it as a diamond in
 * a hatched bar, gains right of the upright zero line and losses left. What nobody would notice is named below.
 *
 * @throws DomainError for a width outside 320…1600 or an id that is no plain word
 */
export function habitLadder(result: HabitsResult, options: PictureOptions): string {
  checkOptions(options);
  const { width, id } = options;
  const room = width - 2 * EDGE;
  const told = result.habits.filter(({ gain }) => !makesNoDifference(gain));
  const frame = frameOf(told, options);
  const head = [
    fitted(result.trip.title, room, 12),
    ...wrapped(membersWords(result.members, result.seed), room, 12, 3),
  ];
  const top = 34 + head.length * 16 + 6;
  let bottom = top;
  const rows = told.map((habit, i) => {
    const drawn = drawRow(habit, i, result.habits, frame, bottom);
    bottom += drawn.height;
    return drawn.svg;
  });
  const axis = told.length === 0 ? { svg: "", height: 0 } : drawAxis(frame, top, bottom);
  const feet = footWords(result).flatMap((text) => wrapped(text, room, 12, 4));
  const feetTop = bottom + axis.height + 16;
  const content = [
    words("What each habit is worth", EDGE, 20, { size: 15, bold: true }),
    ...head.map((text, i) => words(text, EDGE, 38 + i * 16, { fill: "ink2" })),
    axis.svg,
    ...rows,
    ...feet.map((text, i) => words(text, EDGE, feetTop + i * 16, { fill: "ink2" })),
  ];
  return picture(
    options,
    feetTop + feet.length * 16 - 4,
    altOf(result, told),
    textures(id, "likely"),
    content.join(""),
  );
}

function frameOf(told: readonly HabitResult[], options: PictureOptions): Frame {
  const wide = options.width >= 640;
  const [low, high] = extentOf_h(told.flatMap(({ gain }) => [gain.food_h, gain.ice_h]));
  const span = Math.max(high - low, 4);
  const left = wide ? WORDS_PX : EDGE;
  const domain = [low < 0 ? low - span * 0.05 : -span * 0.06, high + span * 0.06];
  return { options, wide, x: scaleLinear(domain, [left, options.width - EDGE]) };
}

/** One habit: its rank and name, what is switched, the numbers in words, and both marks. */
function drawRow(
  habit: HabitResult,
  rank: number,
  habits: readonly HabitResult[],
  { options, wide, x }: Frame,
  y: number,
): { svg: string; height: number } {
  const room = (wide ? WORDS_PX - 16 : options.width - EDGE) - EDGE;
  const name = wrapped(`${rank + 1}. ${habit.says}${placeWords(habit, habits)}`, room / 1.12, 13, 2);
  const said = rowWords(habit).flatMap((text) => wrapped(text, room, 12, 3));
  const wordsHeight = name.length * 16 + said.length * LINE_PX;
  const lanesTop = wide ? y + 20 : y + wordsHeight + 18;
  const height = wide ? Math.max(wordsHeight + 16, 56) : wordsHeight + 2 * LANE_PX + 22;
  const laneEnd = lanesTop + LANE_PX + 9;
  const svg = [
    line(EDGE, y, options.width - EDGE, y, "rule", 1),
    ...name.map((text, i) => words(text, EDGE, y + 17 + i * 16, { size: 13, bold: true })),
    ...said.map((text, i) =>
      words(text, EDGE, y + 17 + name.length * 16 + i * LINE_PX - 1, { fill: "ink2" }),
    ),
    wide ? "" : line(x(0), lanesTop - 9, x(0), laneEnd, "ink", 1.5),
    spreadMark("food", habit.gain.food_h, x, lanesTop, options.id),
    spreadMark("ice", habit.gain.ice_h, x, lanesTop + LANE_PX, options.id),
  ].join("");
  return { svg, height };
}

function rowWords({ now, instead, insteadIsGood, gain }: HabitResult): string[] {
  const change = `now: ${now}; ${insteadIsGood ? "instead" : "without it"}: ${instead}`;
  return [change, `food ${gainHours(gain.food_h)}`, `ice ${gainHours(gain.ice_h)}`];
}

function drawAxis({ options, wide, x }: Frame, top: number, bottom: number): { svg: string; height: number } {
  const [x0, x1] = x.range() as [number, number];
  const ticks = x.ticks(Math.max(2, Math.round((x1 - x0) / 80)));
  const label = (hours: number): string => `${hours > 0 ? "+" : hours < 0 ? "−" : ""}${Math.abs(hours)} h`;
  const keyY = bottom + 60;
  const svg = [
    wide ? box(x0, top, x(0), bottom, "night") : "",
    wide ? line(x(0), top, x(0), bottom, "ink", 1.5) : "",
    line(x0, bottom, x1, bottom, "ink", 1.5),
    ...ticks.map((hours) => line(x(hours), bottom, x(hours), bottom + 6, "ink", 1.5)),
    ...ticks
      .filter((hours) => x(hours) - x0 > 16 && x1 - x(hours) > 16)
      .map((hours) => words(label(hours), x(hours), bottom + 20, { size: 13, anchor: "middle" })),
    words("lost", x0, bottom + 38, { fill: "ink2" }),
    words("gained", x1, bottom + 38, { fill: "ink2", anchor: "end" }),
    spreadSign("food", EDGE + 11, keyY - 4, options.id),
    words("cold food lasts", EDGE + 28, keyY, { fill: "ink2" }),
    spreadSign("ice", EDGE + 161, keyY - 4, options.id),
    words("ice lasts", EDGE + 178, keyY, { fill: "ink2" }),
  ];
  return { svg: svg.join(""), height: 64 };
}

function footWords({ habits, skipped }: HabitsResult): string[] {
  const idle = habits.filter(({ gain }) => makesNoDifference(gain)).map(({ says }) => printable(says));
  const left = skipped.map(({ says }) => printable(says));
  return [
    ...(idle.length === 0 ? [] : [`On this trip ${NOTHING}: ${idle.join("; ")}.`]),
    ...(left.length === 0 ? [] : [`Not tried: ${left.join("; ")}.`]),
    "None of this is a promise; a thermometer and your eyes come first.",
  ];
}

function altOf(result: HabitsResult, told: readonly HabitResult[]): { title: string; desc: string } {
  const first = told[0];
  const title = first === undefined ? "no habit tried makes a difference" : `most by ${first.says}`;
  const rows = told.map((habit) => `${habit.says}: ${rowWords(habit).join(", ")}.`);
  return {
    title: `${result.trip.title}: what each habit is worth, ${title}.`,
    desc: [...rows, ...footWords(result)].join(" "),
  };
}
