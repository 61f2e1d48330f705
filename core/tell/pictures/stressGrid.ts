import type { Band } from "../../forecast/result.ts";
import { temperatureWords } from "../../quantity/show.ts";
import type { UnitSystem } from "../../quantity/units.ts";
import type { StressCase, StressResult } from "../../whatif/types.ts";
import { membersWords } from "../gainWords.ts";
import { failWords, firstWords, stressAnswer } from "../stressText.ts";
import { departureClock } from "../whatIfVoice.ts";
import { hasNoIce, printable, spanWords, type TripClock } from "../words.ts";
import { RULER_PX, ruler, type TimeScale, timeScale } from "./marks.ts";
import {
  box,
  checkOptions,
  fitted,
  line,
  type PictureOptions,
  picture,
  textWidth_px,
  words,
  wrapped,
} from "./svg.ts";
import { textureFill, textures } from "./texture.ts";

const EDGE = 14;
const WORDS_PX = 330;
const SQUARES = 10;
const SQUARE_PX = 12;
const BAR_PX = 12;
const LANE_PX = 20;
const LABEL_PX = { wide: 120, narrow: 78 };

interface Frame {
  result: StressResult;
  options: PictureOptions;
  clock: TripClock;
  wide: boolean;
  x: TimeScale;
}

/**
 * What breaks a trip: a row a case with its word, ten squares of which as many are struck as members of ten fail, and on
 * the trip's ruler until when the cold food and the ice of each cooler last: solid nine times in ten, hatched likely,
 * dotted with luck.
 *
 * @throws DomainError for a width outside 320…1600 or an id that is no plain word
 */
export function stressGrid(result: StressResult, options: PictureOptions): string {
  checkOptions(options);
  const { width, units, id } = options;
  const wide = width >= 700;
  const clock = departureClock(result.trip);
  const x = timeScale(clock, wide ? WORDS_PX + LABEL_PX.wide : EDGE + LABEL_PX.narrow, width - EDGE);
  const frame: Frame = { result, options, clock, wide, x };
  const room = width - 2 * EDGE;
  const answer = wrapped(stressAnswer(result), room / 1.12, 13, 3);
  const head = [
    fitted(result.trip.title, room, 12),
    ...wrapped(membersWords(result.members, result.seed), room, 12, 3),
  ];
  const top = 38 + answer.length * 17 + head.length * 16;
  let bottom = top;
  const rows = result.cases.map((one) => {
    const drawn = drawCase(one, frame, bottom);
    bottom += drawn.height;
    return drawn.svg;
  });
  const key = wrapped(keyWords(result, units), room, 12, 9);
  const keyTop = bottom + RULER_PX + 18;
  const content = [
    words("What breaks the trip", EDGE, 20, { size: 15, bold: true }),
    ...answer.map((text, i) => words(text, EDGE, 40 + i * 17, { size: 13, bold: true })),
    ...head.map((text, i) => words(text, EDGE, 39 + answer.length * 17 + i * 16, { fill: "ink2" })),
    ...rows,
    ruler(x, clock, bottom),
    ...key.map((text, i) => words(text, EDGE, keyTop + i * 16, { fill: "ink2" })),
  ];
  const desc = result.cases.map(
    (one) => `${one.key} ${one.holds ? "holds" : "breaks"}, ${failWords(one)}: ${rowWords(one, frame)}.`,
  );
  return picture(
    options,
    keyTop + key.length * 16 - 4,
    { title: `${result.trip.title}: ${stressAnswer(result)}`, desc: desc.join(" ") },
    textures(id, "likely", "luck"),
    content.join(""),
  );
}

function rowWords(one: StressCase, { result, options, clock }: Frame): string {
  const limit = temperatureWords(result.limit.limit_C, options.units);
  const ice = one.coolers.map(({ name, iceOut_h }) =>
    hasNoIce(iceOut_h)
      ? `${printable(name)} no water ice`
      : `${printable(name)} ice ${spanWords(iceOut_h, clock, result.members < 2)}`,
  );
  return [firstWords(one, limit, { clock, middle: result.members < 2 }), ...ice].join("; ");
}

function keyWords({ limit, confidence_frac }: StressResult, units: UnitSystem): string {
  const allowed = Math.round((1 - confidence_frac) * 100);
  return `Squares: of ten members, how many lose a perishable to ${temperatureWords(limit.limit_C, units)} before it is eaten; a case holds at no more than ${allowed} in 100. Bars: solid 9 in 10, hatched likely, dotted 1 in 10; a bare frame: food past its limit, ice gone. None of this is a promise; a thermometer and your eyes come first.`;
}

function drawCase(one: StressCase, frame: Frame, y: number): { svg: string; height: number } {
  const { options, wide, x, result, clock } = frame;
  const room = (wide ? WORDS_PX - 12 : options.width - EDGE) - EDGE;
  const word = one.holds ? "holds" : "breaks";
  const name = fitted(one.key, room - textWidth_px(`: ${word}`, 13, true), 13, true);
  const limit = temperatureWords(result.limit.limit_C, options.units);
  const said = wrapped(firstWords(one, limit, { clock, middle: result.members < 2 }), room, 12, 3);
  const squaresY = y + 26;
  const wordsHeight = 44 + said.length * 15;
  const lanesTop = wide ? y + 12 : y + wordsHeight + 6;
  const lanes = [
    { label: "cold food", band: one.overLimit_h, isFood: true },
    ...one.coolers.map(({ name, iceOut_h }) => ({
      label: `ice, ${printable(name)}`,
      band: iceOut_h,
      isFood: false,
    })),
  ];
  const lanesEnd = lanesTop + lanes.length * LANE_PX;
  const svg = [
    line(EDGE, y, options.width - EDGE, y, "rule", 1),
    words(`${name}: ${word}`, EDGE, y + 17, { size: 13, bold: true }),
    squares(one, EDGE, squaresY),
    words(failWords(one), EDGE + SQUARES * (SQUARE_PX + 3) + 8, squaresY + 11),
    ...said.map((text, i) => words(text, EDGE, y + 55 + i * 15, { fill: "ink2" })),
    ...lanes.map(({ label, band, isFood }, i) => {
      const top = lanesTop + i * LANE_PX;
      const left = x.range()[0]! - 8;
      return (
        words(fitted(label, LABEL_PX[wide ? "wide" : "narrow"] - 6, 12, isFood), left, top + 10, {
          anchor: "end",
          bold: isFood,
        }) + bar(band, isFood, frame, top)
      );
    }),
  ].join("");
  const height = Math.max(lanesEnd, y + wordsHeight) - y + 12;
  return { svg, height };
}

/** Struck squares for members that fail: one at least where any does, not all where one holds. */
function squares({ fails_frac }: StressCase, x: number, y: number): string {
  const some = fails_frac > 0 ? 1 : 0;
  const most = fails_frac < 1 ? SQUARES - 1 : SQUARES;
  const failed = Math.min(most, Math.max(some, Math.round(fails_frac * SQUARES)));
  return Array.from({ length: SQUARES }, (_, i) => {
    const left = x + i * (SQUARE_PX + 3);
    const isStruck = i < failed;
    const frame = box(left, y, left + SQUARE_PX, y + SQUARE_PX, isStruck ? "ink" : "sheet", "ink", 1.5);
    if (!isStruck) return frame;
    return frame + line(left + 2, y + SQUARE_PX - 2, left + SQUARE_PX - 2, y + 2, "sheet", 2);
  }).join("");
}

function bar({ p10, p50, p90 }: Band, isFood: boolean, { x, clock, options }: Frame, y: number): string {
  const end = clock.length_h;
  const at = (t_h: number | null): number => Math.min(Math.max(t_h ?? end, 0), end);
  const part = (from: number, to: number, fill: string, stroke: string): string =>
    to > from ? box(x(from), y, x(to), y + BAR_PX, fill, stroke, 1.4) : "";
  return [
    part(0, at(p10), "sure", "sure"),
    part(at(p10), at(p50), textureFill("likely", options.id), "sure"),
    part(at(p50), at(p90), textureFill("luck", options.id), "sure"),
    part(at(p90), end, isFood ? "heatFill" : "sheet", isFood ? "heat" : "edge"),
  ].join("");
}
