import type { CampForecast } from "../../camp/camp.ts";
import type { LearnedResult, LookResult } from "../../camp/campResult.ts";
import type { Band } from "../../forecast/result.ts";
import { lookWords, width_h } from "../campText.ts";
import { clockOf, durationWords, nameWords, printable, spanWords, type TripClock } from "../words.ts";
import {
  nightColumns,
  RULER_PX,
  reckonedMoment,
  ruler,
  shortMoment,
  type TimeScale,
  timeScale,
} from "./marks.ts";
import { box, checkOptions, fitted, line, type PictureOptions, picture, words, wrapped } from "./svg.ts";
import { textureFill, textures } from "./texture.ts";

const EDGE = 14;
const WORDS_PX = 300;
const ROW_PX = { wide: 26, narrow: 44 };
const BAR_PX = 13;
const HEAD_PX = 26;

/** One rung: the end of the ice as it was told from then on. */
interface Rung {
  says: string;
  /** When somebody looked; null: before any look. */
  at_h: number | null;
  band: Band;
}

interface Ladder {
  learned: LearnedResult;
  rungs: readonly Rung[];
}

interface Frame {
  clock: TripClock;
  x: TimeScale;
  wide: boolean;
  options: PictureOptions;
}

function rungsOf(learned: LearnedResult, looks: readonly LookResult[], clock: TripClock): Rung[] {
  const own = looks.filter(({ cooler }) => cooler === learned.cooler);
  return [
    { says: "before any look", at_h: null, band: learned.iceOutBefore_h },
    ...own.map((look) => ({
      says: `${shortMoment(look.at_h, clock)}: ${lookWords(look)}`,
      at_h: look.at_h,
      band: look.after_h,
    })),
  ];
}

/** How the end of one cooler's ice was told at first, and now: "to the return, now within 7 h". */
function narrowedWords(rungs: readonly Rung[], clock: TripClock): string {
  const [first, last] = [rungs[0]!.band, rungs.at(-1)!.band];
  const say = (band: Band): string =>
    band.p10 === null
      ? "to the return"
      : `within ${durationWords(Math.round(width_h(band, clock.length_h)))}`;
  return say(first) === say(last) ? `${say(last)}, as before` : `${say(first)} at first, now ${say(last)}`;
}

/**
 * How a forecast narrows as one looks into the cooler: a ladder for each cooler that was looked into, a rung for each look,
 * and on it until when its ice lasts as far as was known then: solid nine times in ten, hatched likely, dotted with luck.
 * The mark on a rung is the look itself. All acts of the log are known on every rung.
 *
 * @returns null where nobody looked
 * @throws DomainError for a width outside 320…1600 or an id that is no plain word
 */
export function lookLadder(whole: CampForecast, options: PictureOptions): string | null {
  checkOptions(options);
  const { width } = options;
  const { told, camp } = whole;
  const clock = clockOf(told.trip);
  const wide = width >= 700;
  const x = timeScale(clock, wide ? WORDS_PX : EDGE, width - EDGE);
  const frame: Frame = { clock, x, wide, options };
  const ladders = camp.learned
    .filter(({ nLooks }) => nLooks > 0)
    .map((learned) => ({ learned, rungs: rungsOf(learned, camp.looks, clock) }));
  return ladders.length === 0 ? null : drawn(whole, ladders, frame);
}

function drawn({ told }: CampForecast, ladders: readonly Ladder[], frame: Frame): string {
  const { clock, x, wide, options } = frame;
  const { width, id } = options;
  const top = 62;
  let bottom = top;
  const rows = ladders.map(({ learned, rungs }) => {
    const from = bottom;
    bottom += HEAD_PX + rungs.length * ROW_PX[wide ? "wide" : "narrow"] + 8;
    return ladder(learned, rungs, frame, from);
  });
  const key = wrapped(
    "Bars: ice solid 9 in 10, hatched likely, dotted 1 in 10; the ring is the look. Reckoned, not measured.",
    width - 2 * EDGE,
    12,
    4,
  );
  const keyTop = bottom + RULER_PX + 18;
  const said = `End of the ice: ${ladders.map(({ learned, rungs }) => `${printable(learned.cooler)} ${narrowedWords(rungs, clock)}`).join("; ")}`;
  const desc = ladders.flatMap(({ learned, rungs }) =>
    rungs.map(
      ({ says, band }) => `${printable(learned.cooler)}, ${says}: ice ${spanWords(band, clock, false)}.`,
    ),
  );
  const content = [
    words("What looking inside told", EDGE, 20, { size: 15, bold: true }),
    ...wrapped(said, (width - 2 * EDGE) / 1.05, 12, 2).map((text, i) =>
      words(text, EDGE, 38 + i * 15, { fill: "ink2" }),
    ),
    nightColumns(x, told.nights_h, top, bottom, id),
    ...rows,
    ruler(x, clock, bottom),
    ...key.map((text, i) => words(text, EDGE, keyTop + i * 16, { fill: "ink2" })),
  ];
  return picture(
    options,
    keyTop + key.length * 16 - 4,
    { title: `${printable(told.trip.title)}: ${said}`, desc: desc.join(" ") },
    textures(id, "likely", "luck", "night"),
    content.join(""),
  );
}

function ladder(learned: LearnedResult, rungs: readonly Rung[], frame: Frame, y: number): string {
  const { x, wide, options } = frame;
  const row = ROW_PX[wide ? "wide" : "narrow"];
  const name = fitted(`${nameWords([learned.cooler])}: ice`, options.width - 2 * EDGE, 13, true);
  return [
    line(EDGE, y, options.width - EDGE, y, "rule", 1),
    words(name, EDGE, y + 17, { size: 13, bold: true, halo: true }),
    ...rungs.map((one, i) => rung(one, frame, y + HEAD_PX + i * row)),
    // The last word stands once, beside the rung it belongs to.
    words(lastWords(rungs.at(-1)!.band, frame), x.range()[1]!, y + 17, {
      anchor: "end",
      bold: true,
      halo: true,
    }),
  ].join("");
}

function lastWords({ p10, p50, p90 }: Band, { clock }: Frame): string {
  const say = (t_h: number | null): string => (t_h === null ? "past the return" : reckonedMoment(t_h, clock));
  return p10 === null ? "past the return, 9 in 10" : `likely ${say(p50)} (${say(p10)} to ${say(p90)})`;
}

function rung({ says, at_h, band }: Rung, { x, clock, wide, options }: Frame, y: number): string {
  const room = wide ? WORDS_PX - EDGE - 10 : options.width - 2 * EDGE;
  const barTop = wide ? y : y + 18;
  const end = clock.length_h;
  const at = (t_h: number | null): number => Math.min(Math.max(t_h ?? end, 0), end);
  const part = (from: number, to: number, fill: string): string =>
    to > from ? box(x(from), barTop, x(to), barTop + BAR_PX, fill, "sure", 1.2) : "";
  const text = fitted(says, room, 12);
  return [
    words(text, EDGE, wide ? y + 11 : y + 12, { halo: true }),
    part(0, at(band.p10), "sure"),
    part(at(band.p10), at(band.p50), textureFill("likely", options.id)),
    part(at(band.p50), at(band.p90), textureFill("luck", options.id)),
    at_h === null ? "" : lookMark(x(Math.min(at_h, end)), barTop + BAR_PX / 2),
  ].join("");
}

/** A ring that stands out on solid and on white. */
function lookMark(cx: number, cy: number): string {
  return `<circle cx="${cx.toFixed(1)}" cy="${cy.toFixed(1)}" r="6.5" fill="var(--sheet)" stroke="var(--ink)" stroke-width="2.4"/>`;
}
