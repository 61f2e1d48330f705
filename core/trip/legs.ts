import { unmeasuredWater_C } from "../sky/grounds.ts";
import { placeDefaults } from "../sky/places.ts";
import type { PlaceKind, Stay, Weather } from "../sky/types.ts";
import type { Calendar } from "./calendar.ts";
import type { LegFile, SpotFile } from "./file.ts";
import { measures, type Notes } from "./notes.ts";

type Spot = Pick<Stay, "shade_frac" | "ground" | "air_C" | "water_C"> & { airChanges_per_h: number | null };

/** What a spot's defaults depend on. */
export interface SpotContext {
  path: string;
  place: PlaceKind;
  /** When the stay begins; NaN where it has a problem. */
  from_s: number;
  weather: Weather | null;
}

/**
 * What is known of the spot where a cooler stands. What the file leaves out is listed as assumed and stays null: the
 * place's own rule then holds.
 */
export function spotOf(notes: Notes, file: SpotFile, context: SpotContext): Spot {
  const { path, place } = context;
  assumeSpot(notes, file, context);
  return {
    shade_frac: notes.siOrNull(`${path}.shade`, file.shade, measures.share),
    ground: file.ground ?? null,
    air_C: notes.siOrNull(`${path}.air`, file.air, measures.outdoors),
    water_C: notes.siOrNull(
      `${path}.water`,
      wetPlace(file, place) ? file.water : dryWater(notes, file, path),
      measures.water,
    ),
    airChanges_per_h: freshAirOf(notes, file, path, place),
  };
}

/** Fresh air of a closed place; silence stays null, which counts as unknown and not as fresh. */
function freshAirOf(notes: Notes, file: SpotFile, path: string, place: PlaceKind): number | null {
  const given = file["air changes"] ?? null;
  if (given === null || !placeDefaults[place].isOpen) return given;
  return notes.refuse(`${path}.air changes`, `left out in the open: ${place} is no closed place`, given);
}

const wetPlace = (file: SpotFile, place: PlaceKind): boolean =>
  (file.ground ?? placeDefaults[place].ground) === "water" || placeDefaults[place].water_frac > 0;

function dryWater(notes: Notes, file: SpotFile, path: string): undefined {
  if (file.water !== undefined)
    notes.refuse(`${path}.water`, "left out where nothing stands on water", file.water);
}

function assumeSpot(notes: Notes, file: SpotFile, { path, place, from_s, weather }: SpotContext): void {
  const row = placeDefaults[place];
  const percent = (share: number): string => `${Math.round(100 * share)} %`;
  const sunCounts = row.isOpen || row.sunPass_frac > 0 || row.warming_K > 0;
  const shadeListed = file.shade === undefined && sunCounts && row.air_C === null;
  const air_C = file.air === undefined ? row.air_C : null;
  if (shadeListed) {
    const range = row.shadeRange_frac.map(percent) as unknown as readonly [string, string];
    notes.assume(`${path}.shade`, percent(row.shade_frac), row.says, range, row.source);
  }
  // What the place stands for is said once, where its first default is listed.
  const says = shadeListed || air_C !== null ? "" : `: ${row.says}`;
  if (file.ground === undefined) notes.assume(`${path}.ground`, row.ground, `usual for ${place}${says}`);
  if (air_C !== null) {
    const range = [`${air_C - 4} C`, `${air_C + 6} C`] as const;
    notes.assume(`${path}.air`, `${air_C} C`, row.says, range, row.source);
  }
  if (file.water !== undefined || !wetPlace(file, place) || weather === null || Number.isNaN(from_s)) return;
  const water_C = Math.min(35, Math.round(unmeasuredWater_C(weather.dayMean_C(from_s))));
  const range = [`${Math.max(0, water_C - 5)} C`, `${water_C + 5} C`] as const;
  notes.assume(`${path}.water`, `${water_C} C`, "not given: below the day's mean air, day by day", range);
}

/** Where everything is from departure to return, without gaps. */
export function resolveLegs(
  notes: Notes,
  calendar: Calendar,
  weather: Weather | null,
  files: readonly LegFile[] = [{}],
): Stay[] {
  const stays: Stay[] = [];
  let from_s = 0;
  files.forEach((leg, i) => {
    const path = `legs[${i}]`;
    const why = "not given: at camp";
    const place = leg.where ?? notes.assume<PlaceKind>(`${path}.where`, "camp", why, ["cabin", "truck bed"]);
    const to_s = endOf(notes, calendar, leg, path, i === files.length - 1);
    if (to_s <= from_s) {
      const after = i === 0 ? "departure" : "the leg before it ends";
      notes.refuse(`${path}.until`, `later than ${after}`, leg.until);
    }
    stays.push({ place, from_s, to_s, ...spotOf(notes, leg, { path, place, from_s, weather }) });
    if (!Number.isNaN(to_s)) from_s = to_s;
  });
  return stays;
}

function endOf(notes: Notes, calendar: Calendar, leg: LegFile, path: string, last: boolean): number {
  const at = `${path}.until`;
  if (leg.until === undefined) {
    return last ? calendar.duration_s : notes.refuse(at, "given for every leg but the last", undefined);
  }
  const until_s = calendar.seconds(at, leg.until);
  if (!last || !(until_s < calendar.duration_s)) return until_s;
  notes.assume(at, calendar.return, `the last leg holds until return, past ${leg.until}`);
  return calendar.duration_s;
}
