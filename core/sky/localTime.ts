import { Temporal } from "temporal-polyfill";
import { DomainError } from "../quantity/errors.ts";

/**
 * The instant, in milliseconds since 1970 UTC, at which clocks of a zone show a local date and time. An hour that a
 * clock change skips is read as if the change had not come yet; an hour that comes twice is the first of the two.
 * It is not a parser of what people type: `localIso` is ISO without an offset, `2027-06-18T06:30`.
 *
 * @throws DomainError when the text is not such a time or the zone is unknown
 * @source derivation
 */
export function localInstant_ms(localIso: string, timezone: string): number {
  if (/[zZ]$|[+-]\d{2}:?\d{2}$/.test(localIso))
    throw new DomainError(`localIso must have no offset, got ${localIso}`);
  try {
    return Temporal.PlainDateTime.from(localIso).toZonedDateTime(timezone).epochMilliseconds;
  } catch {
    throw new DomainError(
      `localIso and timezone must be an ISO time and an IANA zone, got ${localIso} ${timezone}`,
    );
  }
}

/**
 * What a clock of the zone shows at an instant, in seconds since its midnight: 0…86399.999.
 *
 * @source derivation
 */
export function localClock_s(instant_ms: number, timezone: string): number {
  const time = zoned(instant_ms, timezone);
  return time.hour * 3600 + time.minute * 60 + time.second + time.millisecond / 1000;
}

/**
 * Local date and time to the minute, ISO without offset: the inverse of `localInstant_ms` but for a repeated hour.
 *
 * @source derivation
 */
export function localIso(instant_ms: number, timezone: string): string {
  return zoned(instant_ms, timezone).toPlainDateTime().toString({ smallestUnit: "minute" });
}

/**
 * Start of the local day so many days after (before, when negative) the one that holds the instant. Days of 23 or 25 hours
 * come out right.
 *
 * @source derivation
 */
export function dayStart_ms(instant_ms: number, timezone: string, after_days: number): number {
  return zoned(instant_ms, timezone).toPlainDate().add({ days: after_days }).toZonedDateTime(timezone)
    .epochMilliseconds;
}

/**
 * Every moment between two at which clocks of the zone show a time of day, in seconds from an instant; one a day, on
 * days of 23 and 25 hours too.
 *
 * @param clock_s 0…86400 since midnight
 * @source derivation
 */
export function clockMoments_s(
  start_ms: number,
  timezone: string,
  clock_s: number,
  from_s: number,
  to_s: number,
): number[] {
  const first = zoned(start_ms, timezone).toPlainDate();
  const at = Temporal.PlainTime.from("00:00").add({ seconds: Math.round(clock_s) % 86_400 });
  const late = clock_s >= 86_400 ? 1 : 0;
  const moments: number[] = [];
  for (let day = Math.floor(from_s / 86_400) - 1; ; day++) {
    const date = first.add({ days: day + late });
    const t_s =
      (date.toZonedDateTime({ timeZone: timezone, plainTime: at }).epochMilliseconds - start_ms) / 1000;
    if (t_s > to_s) return moments;
    if (t_s >= from_s) moments.push(t_s);
  }
}

function zoned(instant_ms: number, timezone: string): Temporal.ZonedDateTime {
  try {
    return Temporal.Instant.fromEpochMilliseconds(instant_ms).toZonedDateTimeISO(timezone);
  } catch {
    throw new DomainError(
      `instant_ms and timezone must be a whole number and an IANA zone, got ${instant_ms} ${timezone}`,
    );
  }
}
