import type { PlanResult } from "../../forecast/planResult.ts";
import type { Forecast } from "../../forecast/types.ts";
import { DomainError } from "../../quantity/errors.ts";
import { temperatureWords } from "../../quantity/show.ts";
import { localInstant_ms } from "../../sky/localTime.ts";
import type { TripFood } from "../../trip/types.ts";
import { type Voice, voiceFor } from "../voice.ts";
import { clockWords, localTime, momentWords, type TripClock } from "../words.ts";
import type { BookOptions } from "./options.ts";

/** What every page of the book is made from. */
export interface Book {
  forecast: Forecast;
  plan: PlanResult;
  options: BookOptions;
  /** Without a limit of columns: paper breaks its own lines. */
  voice: Voice;
}

/** @throws DomainError for a forecast without a plan */
export function bookOf(forecast: Forecast, options: BookOptions): Book {
  const { plan } = forecast.result;
  if (plan === undefined) throw new DomainError("forecast must hold a plan, got none");
  const voice = { ...voiceFor(forecast, { units: options.units }), width: 1e6 };
  return { forecast, plan, options, voice };
}

/** "limit 40 °F (consumer)". */
export function limitWords({ forecast, voice }: Book): string {
  const { limit_C, profile } = forecast.result.limit;
  return `limit ${temperatureWords(limit_C, voice.units)} (${profile})`;
}

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
const ISO = /^\d{4}-(\d{2})-\d{2}T\d{2}:\d{2}/;

/** Hours from departure of a local moment; null where the text is none. */
function hoursTo_h(iso: string, clock: TripClock): number | null {
  if (!ISO.test(iso)) return null;
  return (localInstant_ms(iso, clock.timezone) - clock.depart_ms) / 3_600_000;
}

/** "Sat day 1, 06:30"; before the day of departure "Thu 5 Aug, 20:00"; nothing where the text is no moment. */
export function momentIn(iso: string, clock: TripClock): string {
  const t_h = hoursTo_h(iso, clock);
  if (t_h === null) return "";
  if (localTime(t_h, clock).day >= 1) return momentWords(t_h, clock);
  return `${dayIn(iso, clock)}, ${timeIn(iso, clock)}`;
}

/** "Thu 5 Aug", from the day of departure on "Sat 7 Aug, day 1". */
export function dayIn(iso: string, clock: TripClock): string {
  const t_h = hoursTo_h(iso, clock);
  if (t_h === null) return "";
  const { weekday, dayOfMonth, day } = localTime(t_h, clock);
  const date = `${weekday} ${dayOfMonth} ${MONTHS[Number(ISO.exec(iso)![1]) - 1]}`;
  return day >= 1 ? `${date}, day ${day}` : date;
}

/** "06:30". */
export function timeIn(iso: string, clock: TripClock): string {
  const t_h = hoursTo_h(iso, clock);
  return t_h === null ? "" : clockWords(localTime(t_h, clock).sinceMidnight_min);
}

/** The food that a cooler is packed with at departure. */
export function packedIn({ forecast }: Book, cooler: number): TripFood[] {
  return forecast.trip.food.filter((food) => food.cooler === cooler && food.putIn_s === null);
}

/** Nothing goes into it by the plan, at no time: it has no page and no label. */
export function isUnused({ forecast }: Book, cooler: number): boolean {
  return forecast.result.warnings.some(
    ({ code, path }) => code === "cooler-unused" && path === `coolers[${cooler}]`,
  );
}

/** A number of its own, where it has one. */
export function numberOf({ forecast }: Book, cooler: number): string {
  const { number } = forecast.trip.coolers[cooler]!;
  return String(number ?? cooler + 1);
}

/** Money with two decimals, in the person's own currency; nothing where it is not known. */
export function money(price: number | null): string {
  return price === null ? "" : price.toFixed(2);
}
