import { bisectRight, max, range, sum } from "d3-array";
import type { BandSeries, CoolerResult } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { nColumns, padded, paddedLeft } from "./lines.ts";
import { bare } from "./numbers.ts";
import { iceUnit, type Voice } from "./voice.ts";
import { dayStart_h, localTime } from "./words.ts";

const MORNING_h = 7;
const EVENING_h = 19;
const DAY_COLUMNS = 10;
/** A number alone needs no more; a range makes its column as wide as it is. */
const LEAST_COLUMNS: readonly number[] = [11, 11, 12, 10, 10];
/** From here on a mass with a range is told in whole units: a tenth would claim too much. */
const WHOLE_FROM = 20;

type Cell = Readonly<Record<keyof BandSeries, number>>;

/**
 * One row a day: ice in the morning and evening, the warmest perishable of the day, the water; dry ice if there is any.
 * With members each is likely and its range. Columns that do not fit beside the others stand in a second table below.
 */
export function dayTable(forecast: Forecast, index: number, voice: Voice): string[] {
  const cooler = forecast.result.coolers[index]!;
  const end_h = forecast.result.trip.hours;
  const { dryIce_kg } = cooler.series;
  const ice = iceUnit(voice.units);
  const heads = [
    ["", "ice 07:00", "ice 19:00", "warmest", "water", "dry ice"],
    ["", ice, ice, `food, ${degree(voice)}`, litre(voice), ice],
  ];
  const lastDay = localTime(end_h, voice.clock).day;
  const rows = range(1, lastDay + 1).map((day) => dayCells(cooler, day, end_h, voice));
  const iceLeft = mass(cooler, cooler.series.ice_kg, end_h, voice);
  rows.push(["return", "", iceLeft, "", volume(cooler, end_h, voice), ""]);
  const nCells = max(dryIce_kg.p90)! > 0 ? 6 : 5;
  return tables(
    heads.map((cells) => cells.slice(0, nCells)),
    rows.map((cells) => cells.slice(0, nCells)),
    voice,
  );
}

/** Columns side by side as long as they fit, each table with its days. */
function tables(heads: readonly string[][], rows: readonly string[][], voice: Voice): string[] {
  const widths = heads[0]!.map((_, i) => {
    const widest = Math.max(...[...heads, ...rows].map((cells) => nColumns(cells[i]!)));
    return i === 0 ? DAY_COLUMNS : Math.max(widest + 2, LEAST_COLUMNS[i - 1]!);
  });
  const groups: number[][] = [[]];
  for (let i = 1; i < widths.length; i += 1) {
    const taken = sum(groups.at(-1)!, (column) => widths[column]!);
    if (DAY_COLUMNS + taken + widths[i]! > voice.width) groups.push([]);
    groups.at(-1)!.push(i);
  }
  return groups.flatMap((columns) => {
    const row = (cells: readonly string[]): string =>
      padded(cells[0]!, DAY_COLUMNS) + columns.map((i) => paddedLeft(cells[i]!, widths[i]!)).join("");
    const filled = rows.filter((cells) => columns.some((i) => cells[i] !== ""));
    return [...heads.map((cells) => voice.paint.faint(row(cells))), ...filled.map(row)];
  });
}

function dayCells(cooler: CoolerResult, day: number, tripEnd_h: number, voice: Voice): string[] {
  const midnight_h = dayStart_h(day, voice.clock);
  const end_h = Math.min(dayStart_h(day + 1, voice.clock), tripEnd_h);
  const iceAt = (clock_h: number): string => {
    const t_h = midnight_h + clock_h;
    return t_h < 0 || t_h > tripEnd_h ? "–" : mass(cooler, cooler.series.ice_kg, t_h, voice);
  };
  return [
    `day ${day} ${localTime(Math.max(0, midnight_h), voice.clock).weekday}`,
    iceAt(MORNING_h),
    iceAt(EVENING_h),
    warmest(cooler, midnight_h, end_h, voice),
    volume(cooler, end_h, voice),
    mass(cooler, cooler.series.dryIce_kg, end_h, voice),
  ];
}

/** "31", with a range "31 (29–33)": a likely value and both ends, once where they are one. */
function cell(band: Cell, say: (value: number) => string, voice: Voice): string {
  const [low, likely, high] = [say(band.p10), say(band.p50), say(band.p90)];
  if (voice.middle || (low === likely && high === likely)) return likely;
  return low.startsWith("−") ? `${likely} (${low} to ${high})` : `${likely} (${low}–${high})`;
}

function mass(cooler: CoolerResult, series: BandSeries, t_h: number, voice: Voice): string {
  return amount(cooler, series, t_h, iceUnit(voice.units), 1, voice);
}

function volume(cooler: CoolerResult, t_h: number, voice: Voice): string {
  return amount(cooler, cooler.series.water_L, t_h, litre(voice), 1e-3, voice);
}

function amount(
  cooler: CoolerResult,
  series: BandSeries,
  t_h: number,
  unit: string,
  inSi: number,
  voice: Voice,
): string {
  const i = Math.max(0, bisectRight(cooler.series.t_h, t_h + 1e-6) - 1);
  const most = Number(bare(max(series.p90)! * inSi, unit, 1).replace("−", "-"));
  const digits = most >= WHOLE_FROM && !voice.middle ? 0 : 1;
  const band = { p10: series.p10[i]!, p50: series.p50[i]!, p90: series.p90[i]! };
  return cell(band, (value) => bare(value * inSi, unit, digits), voice);
}

/** The warmest moment of each line of the band within a day. */
function warmest(cooler: CoolerResult, from_h: number, to_h: number, voice: Voice): string {
  const { t_h, warmestPerishable_C } = cooler.series;
  const top = (which: "p10" | "p50" | "p90"): number | undefined =>
    max(t_h, (t, i) => (t >= from_h && t <= to_h ? warmestPerishable_C[which][i] : null));
  const [p10, p50, p90] = [top("p10"), top("p50"), top("p90")];
  if (p90 === undefined) return "–";
  const digits = voice.middle || voice.units === "metric" ? 1 : 0;
  return cell({ p10: p10 ?? p90, p50: p50 ?? p90, p90 }, (t_C) => bare(t_C, degree(voice), digits), voice);
}

function degree(voice: Voice): string {
  return voice.units === "us" ? "°F" : "°C";
}

function litre(voice: Voice): string {
  return voice.units === "us" ? "qt" : "L";
}
