import ical, { ICalAlarmType, ICalEventTransparency } from "ical-generator";
import { Temporal } from "temporal-polyfill";
import type { IceRun, PrepAct } from "../forecast/planResult.ts";
import type { Forecast } from "../forecast/types.ts";
import { DomainError } from "../quantity/errors.ts";
import { localInstant_ms } from "../sky/localTime.ts";
import { printable } from "./words.ts";

/** How long an act takes a person, so that a calendar shows it; what freezes or chills by itself is no appointment. */
const SHOWN_min = 15;

interface Entry {
  uid: string;
  at: string;
  summary: string;
  description: string;
}

/**
 * The countdown and the ice runs as a calendar file (RFC 5545). Times are written as instants in UTC, so that they are
 * right in any calendar and across clock changes; they mean the clocks of the trip's place. The same act of a replanned
 * trip keeps its UID, so that a calendar which takes the file again moves the entry and does not double it. The file is
 * no record of what was done.
 *
 * @param made_s when it is made, seconds since 1970 UTC; goes into every entry's stamp
 * @throws DomainError for a forecast without a plan
 */
export function planCalendar(forecast: Forecast, made_s: number): string {
  const { plan } = forecast.result;
  const { trip } = forecast;
  if (plan === undefined) throw new DomainError("forecast must hold a plan, got none");
  const title = printable(trip.title);
  const calendar = ical({
    name: title,
    prodId: { company: "Coldstow", product: "trip plan", language: "EN" },
  });
  const stamp = Temporal.Instant.fromEpochMilliseconds(Math.round(made_s) * 1000);
  for (const { uid, at, summary, description } of [
    ...plan.prep.map(actEntry),
    ...plan.iceRuns.map(runEntry),
  ]) {
    const start = Temporal.Instant.fromEpochMilliseconds(localInstant_ms(at, trip.place.timezone));
    calendar
      .createEvent({
        id: `${slug(uid)}.${slug(title)}.${trip.depart.slice(0, 4)}@coldstow.invalid`,
        stamp,
        start,
        end: start.add({ minutes: SHOWN_min }),
        summary,
        description,
        transparency: ICalEventTransparency.TRANSPARENT,
      })
      .createAlarm({ type: ICalAlarmType.display, trigger: 0, description: summary });
  }
  return calendar.toString();
}

function actEntry({ id, at, does, why }: PrepAct): Entry {
  return { uid: id, at, summary: printable(does), description: printable(why) };
}

function runEntry({ leaveBy, where, into, pieces, form, fallback }: IceRun, i: number): Entry {
  return {
    uid: `ice-run-${i + 1}`,
    at: leaveBy,
    summary: `Leave for ice: ${pieces} × ${printable(form)} at ${printable(where)}`,
    description: `Into ${printable(into)}. If there is none: ${printable(fallback)}`,
  };
}

/** Letters and digits of any script as an identifier; a calendar takes no spaces in one. */
function slug(text: string): string {
  return printable(text)
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-|-$/g, "");
}
