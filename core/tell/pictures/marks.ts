import { type ScaleLinear, scaleLinear } from "d3-scale";
import type { Band } from "../../forecast/result.ts";
import { clockWords, dayStart_h, fullHour_h, localTime, type TripClock } from "../words.ts";
import { box, line, px, tag, textWidth_px, words } from "./svg.ts";
import { textureFill } from "./texture.ts";

/** Departure to return, left to right, true time. */
export type TimeScale = ScaleLinear<number, number>;

export function timeScale(clock: TripClock, x0: number, x1: number): TimeScale {
  return scaleLinear([0, clock.length_h], [x0, x1]);
}

/** Height that `ruler` takes below its line. */
export const RULER_PX = 36;

interface DaySpan {
  day: number;
  from_h: number;
  to_h: number;
}

function daysOf(clock: TripClock): DaySpan[] {
  const last = localTime(clock.length_h, clock).day;
  return Array.from({ length: last }, (_, i) => ({
    day: i + 1,
    from_h: Math.max(0, dayStart_h(i + 1, clock)),
    to_h: Math.min(clock.length_h, dayStart_h(i + 2, clock)),
  })).filter((span) => span.to_h > span.from_h);
}

/**
 * The ruler that every time picture hangs from: a tick at each midnight, the weekday, the day of the month below where a
 * day is wide enough. From eleven days on only initials and every second date.
 */
export function ruler(x: TimeScale, clock: TripClock, y: number): string {
  const [x0, x1] = x.range() as [number, number];
  const days = daysOf(clock);
  const many = days.length > 10;
  const parts = [line(x0, y, x1, y, "ink", 1.5)];
  days.forEach(({ day, from_h, to_h }, i) => {
    if (i > 0) parts.push(line(x(from_h), y, x(from_h), y + 6, "ink", 1.5));
    const { weekday, dayOfMonth } = localTime(from_h, clock);
    const width = x(to_h) - x(from_h);
    const middle = (x(from_h) + x(to_h)) / 2;
    const name = many ? weekday.slice(0, 1) : weekday;
    if (textWidth_px(name, 13) > width) return;
    parts.push(words(name, middle, y + 19, { size: 13, anchor: "middle" }));
    const dated = width >= 30 || (many && day % 2 === 1 && width >= 20);
    if (dated) parts.push(words(dayOfMonth, middle, y + 33, { fill: "ink2", anchor: "middle" }));
  });
  return parts.join("");
}

/** Sunset to sunrise as ruled columns behind everything else. */
export function nightColumns(
  x: TimeScale,
  nights_h: readonly (readonly [number, number])[],
  y0: number,
  y1: number,
  id: string,
): string {
  return nights_h.map(([from_h, to_h]) => box(x(from_h), y0, x(to_h), y1, textureFill("night", id))).join("");
}

/** "Mon 14:30"; "day 11, 14:30" where weekdays come twice. */
export function shortMoment(t_h: number, clock: TripClock): string {
  const { weekday, day, sinceMidnight_min } = localTime(t_h, clock);
  return clock.length_h > 168
    ? `day ${day}, ${clockWords(sinceMidnight_min)}`
    : `${weekday} ${clockWords(sinceMidnight_min)}`;
}

/** The same to the full hour before, for what is reckoned and not given. */
export function reckonedMoment(t_h: number, clock: TripClock): string {
  return shortMoment(fullHour_h(t_h, clock), clock);
}

/** Height that `flags` takes from its line down. */
export function flagsHeight_px(middle: boolean): number {
  return middle ? 36 : 52;
}

const FLAG_WORDS = { p10: "9 in 10 until", p50: "likely until", p90: "1 in 10 past" } as const;

/**
 * When something ends, on a line of its own: solid, hatched and open diamond for the three values of a band, an arrow for
 * what lies past the return. Words stand left, middle and right, so they never meet.
 */
export function flags(
  x: TimeScale,
  what: string,
  band: Band,
  clock: TripClock,
  middle: boolean,
  y: number,
  id: string,
): string {
  const [x0, x1] = x.range() as [number, number];
  const say = (t_h: number | null): string => (t_h === null ? "the end" : reckonedMoment(t_h, clock));
  const parts = [line(x0, y, x1, y, "rule", 1)];
  if (middle) {
    const said =
      band.p50 === null ? `${what} to the return` : `${what} until ${reckonedMoment(band.p50, clock)}`;
    parts.push(flag(x, band.p50, y, "p50", id), words(said, x0, y + 24, { size: 13, bold: true }));
    return parts.join("");
  }
  const places = [
    [x0, "start"],
    [(x0 + x1) / 2, "middle"],
    [x1, "end"],
  ] as const;
  for (const p of ["p90", "p50", "p10"] as const) parts.push(flag(x, band[p], y, p, id));
  (["p10", "p50", "p90"] as const).forEach((p, i) => {
    const [at, anchor] = places[i]!;
    parts.push(words(FLAG_WORDS[p], at, y + 24, { fill: "ink2", anchor }));
    parts.push(words(say(band[p]), at, y + 40, { size: 13, bold: true, anchor }));
  });
  return parts.join("");
}

function flag(x: TimeScale, t_h: number | null, y: number, p: keyof Band, id: string): string {
  if (t_h === null) {
    const end = x.range()[1]!;
    const d = `M${px(end - 14)},${px(y)}h14m-6,-5l6,5l-6,5`;
    return tag("path", { d, fill: "none", stroke: "var(--sure)", "stroke-width": 2.4 });
  }
  const fill = p === "p10" ? "var(--sure)" : p === "p50" ? textureFill("likely", id) : "var(--sheet)";
  return tag("path", { d: diamond(x(t_h), y, 7), fill, stroke: "var(--sure)", "stroke-width": 1.6 });
}

/** The sign of a likely end, for a key. */
export function flagSign(x: number, y: number, id: string): string {
  const fill = textureFill("likely", id);
  return tag("path", { d: diamond(x, y, 6), fill, stroke: "var(--sure)", "stroke-width": 1.6 });
}

function diamond(x: number, y: number, r: number): string {
  return `M${px(x)},${px(y - r)}l${r},${r}l${-r},${r}l${-r},${-r}Z`;
}
