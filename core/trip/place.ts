import lookUpTimezone from "@photostructure/tz-lookup";
import { localInstant_ms } from "../sky/localTime.ts";
import { isTimezone, type Meals } from "./calendar.ts";
import { duties } from "./duties.ts";
import type { TripFile } from "./file.ts";
import { nearest } from "./nearest.ts";
import { measures, type Notes } from "./notes.ts";
import type { Eaters } from "./portions.ts";
import { appetiteWords } from "./schema/setting.ts";
import type { Trip } from "./types.ts";

/** Where the trip is. The sun needs a latitude; the clocks need a time zone. */
export function resolvePlace(notes: Notes, file: TripFile): Trip["place"] {
  const place = file.place ?? {};
  const latitude_deg =
    place.latitude ??
    Number(notes.assume("place.latitude", "40", "no place given: the sun of 40° north", ["25", "55"]));
  const typedZone = place.timezone;
  if (typedZone !== undefined && !isTimezone(typedZone)) {
    const near = nearest(typedZone, [
      "Europe/London",
      "America/New_York",
      "America/Denver",
      "Australia/Sydney",
    ]);
    notes.refuse("place.timezone", "a time zone of the IANA list, such as America/Denver", typedZone, near);
  }
  const zone = typedZone !== undefined && isTimezone(typedZone) ? typedZone : null;
  const longitude_deg = place.longitude ?? assumedLongitude(notes, file.depart, zone ?? "UTC");
  const timezone =
    zone ??
    (place.longitude === undefined
      ? notes.assume("place.timezone", "UTC", "no place given: clocks that follow the sun")
      : notes.assume(
          "place.timezone",
          lookUpTimezone(latitude_deg, longitude_deg),
          "from latitude and longitude",
        ));
  const elevation =
    place.elevation ??
    notes.assume("place.elevation", "0 m", "not given: sea level; thinner air changes little", [
      "0 m",
      "2500 m",
    ]);
  return {
    latitude_deg,
    longitude_deg,
    elevation_m: notes.si("place.elevation", elevation, measures.elevation),
    timezone,
  };
}

/** The longitude at which clocks of the zone agree with the sun at departure. */
function assumedLongitude(notes: Notes, depart: string, zone: string): number {
  const iso = depart.trim().replace(" ", "T");
  const why = "no longitude given: the sun is highest at noon by the clock";
  let hours = 0;
  try {
    hours = (localInstant_ms(iso, "UTC") - localInstant_ms(iso, zone)) / 3_600_000;
  } catch {
    // An unreadable departure is told by the time line.
  }
  return Number(notes.assume("place.longitude", String(Math.max(-180, Math.min(180, 15 * hours))), why));
}

/** Who eats. Silence about vulnerable eaters is read as yes: the stricter rules. */
export function resolveParty(notes: Notes, file: TripFile): Eaters {
  const party = file.party ?? {};
  const isCounted = countsHeads(file);
  const says = isCounted ? "not given; amounts are counted from it" : "not given; moves no heat";
  const assumedCount = (key: string, count: string, why: string): number =>
    Number(notes.assume(`party.${key}`, count, why));
  const adults = party.adults ?? assumedCount("adults", "2", says);
  const children = party.children ?? assumedCount("children", "0", says);
  const vulnerable =
    party.vulnerable ??
    notes.assume("party.vulnerable", "true", "not said, so the stricter rules for vulnerable eaters hold") ===
      "true";
  return {
    adults,
    children,
    vulnerable,
    diets: dietsOf(notes, party.diets ?? {}, adults + children),
    appetite_frac: appetiteOf(notes, party.appetite, isCounted),
    allergies: party.allergies ?? [],
    crew: (party.crew ?? []).map(({ name, does }) => ({ name, does: does ?? duties })),
    childPortion_frac: childPortionOf(notes, party["child portion"], isCounted && children > 0),
  };
}

/** Whether any amount is counted from heads. */
function countsHeads({ food = [], events = [] }: TripFile): boolean {
  const later = events.flatMap((event) => (event.do === "put in" ? [event.item] : []));
  return [...food, ...later].some((item) => item["per person"] !== undefined);
}

function dietsOf(notes: Notes, diets: Record<string, number>, heads: number): Record<string, number> {
  for (const [name, onIt] of Object.entries(diets))
    if (onIt > heads) notes.refuse(`party.diets.${name}`, `at most the heads of the party, ${heads}`, onIt);
  return diets;
}

/** Of usual portions; it may be more than 100 %, so it is read here and not as a share. */
function appetiteOf(notes: Notes, typed: string | undefined, isCounted: boolean): number {
  const at = "party.appetite";
  if (typed === undefined) {
    if (isCounted) notes.assume(at, "100 %", "not given: usual portions", ["85 %", "120 %"]);
    return 1;
  }
  const percent = /^\s*(\d{1,3}(?:\.\d+)?)\s*%\s*$/.exec(typed)?.[1];
  const appetite_frac = Number(percent) / 100;
  return appetite_frac >= 0.3 && appetite_frac <= 3 ? appetite_frac : notes.refuse(at, appetiteWords, typed);
}

/** Usual share of an adult's portion that a child of six to twelve eats. */
const childPortion = "60 %";

function childPortionOf(notes: Notes, typed: string | undefined, counts: boolean): number {
  const at = "party.child portion";
  if (typed === undefined && counts)
    notes.assume(at, childPortion, "not given: usual for school age", ["45 %", "85 %"], "common-practice");
  return notes.si(at, typed ?? childPortion, measures.childPortion);
}

const usualMeals = {
  breakfast: ["07:30", "06:00", "09:30"],
  lunch: ["12:30", "11:30", "14:00"],
  dinner: ["18:30", "17:00", "20:30"],
} as const;

/** When the party eats. */
export function resolveMeals(notes: Notes, file: TripFile): Meals {
  const [breakfast_s, lunch_s, dinner_s] = (["breakfast", "lunch", "dinner"] as const).map((meal) => {
    const [usual, early, late] = usualMeals[meal];
    const path = `meals.${meal}`;
    const why = "not given: a usual hour";
    return notes.clock(
      path,
      file.meals?.[meal] ?? notes.assume(path, usual, why, [early, late], "common-practice"),
    );
  }) as [number, number, number];
  if (breakfast_s > lunch_s || lunch_s > dinner_s) {
    notes.refuse("meals", "in the order breakfast, lunch, dinner", "another order");
  }
  return { breakfast_s, lunch_s, dinner_s };
}

const FAHRENHEIT = 5 / 9;

/** Temperature limits of food by profile: 40 °F as consumers are told, 41 °F as inspectors hold. */
export function resolveLimit(notes: Notes, file: TripFile): Trip["limit"] {
  const why = "not given: the stricter profile, 40 °F";
  const profile = file.limit ?? notes.assume("limit", "consumer", why, null, "fsis-food-safety");
  return { profile, limit_C: ((profile === "consumer" ? 40 : 41) - 32) * FAHRENHEIT };
}

/** How sure the plan must be, as a share. */
export function resolveConfidence_frac(notes: Notes, file: TripFile): number {
  const typed = file.confidence ?? notes.assume("confidence", "90 %", "not given: nine trips in ten");
  return notes.si("confidence", typed, measures.confidence);
}
