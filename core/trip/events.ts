import type { Weather } from "../sky/types.ts";
import type { Calendar } from "./calendar.ts";
import { coolerNamed } from "./coolers.ts";
import type { EventFile, MoveFile, TakeOutFile } from "./file.ts";
import { type FoodSetting, resolveFood } from "./food.ts";
import { resolveAddedIce } from "./ice.ts";
import { spotOf } from "./legs.ts";
import { nearest } from "./nearest.ts";
import { measures, type Notes } from "./notes.ts";
import type { TripCooler, TripEvent, TripFood, TripIce } from "./types.ts";

/** What the events of a file become. */
export interface Happenings {
  events: TripEvent[];
  ice: TripIce[];
  food: TripFood[];
}

/**
 * Sorts the events of a file by kind; acts come out in order of time.
 *
 * @param aboard food that is there from the start
 */
export function resolveEvents(
  notes: Notes,
  setting: FoodSetting,
  weather: Weather | null,
  files: readonly EventFile[],
  aboard: readonly TripFood[],
): Happenings {
  const { calendar, coolers } = setting;
  const happenings: Happenings = { events: [], ice: [], food: [] };
  files.forEach((file, i) => {
    const path = `events[${i}]`;
    if (file.do === "take out") return;
    const t_s = calendar.seconds(`${path}.at`, file.at);
    if (file.do === "add ice") happenings.ice.push(resolveAddedIce(notes, coolers, file, path, t_s));
    else if (file.do === "put in") {
      const cooler = coolerNamed(notes, coolers, `${path}.to`, file.to);
      if (t_s >= calendar.duration_s)
        notes.refuse(`${path}.at`, `before the return, ${calendar.return}`, file.at);
      const food = resolveFood(notes, setting, file.item, `${path}.item`, { t_s, cooler });
      if (food !== null) happenings.food.push(food);
    } else happenings.events.push(resolveAct(notes, calendar, coolers, weather, file, { path, t_s }));
  });
  // What comes in later in the list may be taken out too.
  files.forEach((file, i) => {
    if (file.do !== "take out") return;
    const event = resolveTakeOut(notes, calendar, [...aboard, ...happenings.food], file, `events[${i}]`);
    if (event !== null) happenings.events.push(event);
  });
  happenings.events.sort((a, b) => a.t_s - b.t_s);
  return happenings;
}

function resolveTakeOut(
  notes: Notes,
  calendar: Calendar,
  food: readonly TripFood[],
  file: TakeOutFile,
  path: string,
): TripEvent | null {
  const t_s = calendar.seconds(`${path}.at`, file.at);
  const share_frac = notes.siOrNull(`${path}.share`, file.share, measures.share) ?? 1;
  const named = food.filter(({ name }) => name.trim().toLowerCase() === file.item.trim().toLowerCase());
  // Of several of one name, the first that is there by then and not the last that came.
  const item = named.find(({ putIn_s }) => (putIn_s ?? 0) <= t_s) ?? named[0];
  if (item === undefined) {
    const names = [...new Set(food.map(({ name }) => name))];
    const must = `the name of a food or drink: ${names.slice(0, 10).join(", ")}`;
    notes.refuse(`${path}.item`, must, file.item, nearest(file.item, names));
    return null;
  }
  return { do: "take out", t_s, item: item.id, share_frac, path };
}

type ActFile = Exclude<EventFile, { do: "add ice" | "put in" | "take out" }>;

function resolveAct(
  notes: Notes,
  calendar: Calendar,
  coolers: readonly TripCooler[],
  weather: Weather | null,
  file: ActFile,
  when: { path: string; t_s: number },
): TripEvent {
  const { path } = when;
  const named = (key: string, name: string): number => coolerNamed(notes, coolers, `${path}.${key}`, name);
  switch (file.do) {
    case "merge": {
      const [from, into] = [named("from", file.from), named("into", file.into)];
      if (from === into) notes.refuse(`${path}.into`, "another cooler than from", file.into);
      return { do: "merge", ...when, from, into };
    }
    case "open": {
      const typed =
        file.for ?? notes.assume(`${path}.for`, "20 s", "not given: find it and shut", ["10 s", "60 s"]);
      const for_s = notes.si(`${path}.for`, typed, measures.opening);
      return { do: "open", ...when, cooler: named("cooler", file.cooler), for_s };
    }
    case "cover":
      return { do: "cover", ...when, cooler: named("cooler", file.cooler), cover: file.cover };
    case "move":
      return resolveMove(notes, calendar, weather, file, { ...when, cooler: named("cooler", file.cooler) });
    default:
      return { do: file.do, ...when, cooler: named("cooler", file.cooler) };
  }
}

function resolveMove(
  notes: Notes,
  calendar: Calendar,
  weather: Weather | null,
  file: MoveFile,
  when: { path: string; t_s: number; cooler: number },
): TripEvent {
  const at = `${when.path}.until`;
  if (file.until === undefined) notes.assume(at, calendar.return, "not given: until return");
  const until_s = file.until === undefined ? calendar.duration_s : calendar.seconds(at, file.until);
  if (until_s <= when.t_s) notes.refuse(at, "later than at", file.until ?? calendar.return);
  const spot = spotOf(notes, file, { path: when.path, place: file.to, from_s: when.t_s, weather });
  return { do: "move", ...when, until_s, place: file.to, ...spot };
}
