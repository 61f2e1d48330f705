import { bisectRight, max } from "d3-array";
import type { BandSeries, CoolerResult } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { padded, paddedLeft } from "./lines.ts";
import { bare } from "./numbers.ts";
import { iceNumber, iceUnit, type Voice } from "./voice.ts";
import { dayStart_h, localTime } from "./words.ts";

const MORNING_h = 7;
const EVENING_h = 19;

/** One row a day: ice in the morning and evening, the warmest perishable of the day, the water; dry ice if there is any. */
export function dayTable(forecast: Forecast, index: number, voice: Voice): string[] {
  const cooler = forecast.result.coolers[index]!;
  const end_h = forecast.result.trip.hours;
  const hasDryIce = max(cooler.series.dryIce_kg.p50)! > 0;
  const nCells = hasDryIce ? 6 : 5;
  const row = (cells: readonly string[]): string => tableRow(cells.slice(0, nCells), voice);
  const ice = iceUnit(voice.units);
  const lines = [
    ["", "ice 07:00", "ice 19:00", "warmest", "water", "dry ice"],
    ["", ice, ice, `food, ${degree(voice)}`, litre(voice), ice],
  ].map((cells) => voice.paint.faint(row(cells)));
  const lastDay = localTime(end_h, voice.clock).day;
  for (let day = 1; day <= lastDay; day += 1) lines.push(row(dayCells(cooler, day, end_h, voice)));
  lines.push(row(["return", "", iceCell(cooler, end_h, voice), "", waterAt(cooler, end_h, voice), ""]));
  return lines;
}

function tableRow(cells: readonly string[], voice: Voice): string {
  const nIceColumns = voice.middle ? 11 : 18;
  const rest = cells.slice(1).map((text, i) => paddedLeft(text, i < 2 ? nIceColumns : i === 2 ? 12 : 10));
  return padded(cells[0]!, 10) + rest.join("");
}

function dayCells(cooler: CoolerResult, day: number, tripEnd_h: number, voice: Voice): string[] {
  const midnight_h = dayStart_h(day, voice.clock);
  const end_h = Math.min(dayStart_h(day + 1, voice.clock), tripEnd_h);
  const iceAt = (clock_h: number): string => {
    const t_h = midnight_h + clock_h;
    return t_h < 0 || t_h > tripEnd_h ? "–" : iceCell(cooler, t_h, voice);
  };
  return [
    `day ${day} ${localTime(Math.max(0, midnight_h), voice.clock).weekday}`,
    iceAt(MORNING_h),
    iceAt(EVENING_h),
    warmest(cooler, midnight_h, end_h, voice),
    waterAt(cooler, end_h, voice),
    iceNumber(at(cooler, cooler.series.dryIce_kg, "p50", end_h), voice.units),
  ];
}

function at(cooler: CoolerResult, series: BandSeries, which: keyof BandSeries, t_h: number): number {
  return series[which][Math.max(0, bisectRight(cooler.series.t_h, t_h + 1e-6) - 1)]!;
}

function iceCell(cooler: CoolerResult, t_h: number, voice: Voice): string {
  const [low, likely, high] = (["p10", "p50", "p90"] as const).map((p) =>
    iceNumber(at(cooler, cooler.series.ice_kg, p, t_h), voice.units),
  );
  return voice.middle ? likely! : `${likely} (${low}–${high})`;
}

function waterAt(cooler: CoolerResult, t_h: number, voice: Voice): string {
  return bare(at(cooler, cooler.series.water_L, "p50", t_h) / 1000, litre(voice), 1);
}

/** The warm end of the band: what is not known counts against the food. */
function warmest(cooler: CoolerResult, from_h: number, to_h: number, voice: Voice): string {
  const { t_h, warmestPerishable_C } = cooler.series;
  const top = max(t_h, (t, i) => (t >= from_h && t <= to_h ? warmestPerishable_C.p90[i] : null));
  return top === undefined ? "–" : bare(top, degree(voice), 1);
}

function degree(voice: Voice): string {
  return voice.units === "us" ? "°F" : "°C";
}

function litre(voice: Voice): string {
  return voice.units === "us" ? "qt" : "L";
}
