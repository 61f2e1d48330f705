import { atClocks_s } from "../../plan/mergeTrial.ts";
import { cut } from "../lines.ts";
import { clockWords, localTime, printable, type TripClock } from "../words.ts";
import { type Book, isUnused, numberOf } from "./book.ts";
import { paragraph, type Table } from "./flow.ts";
import { pages, type Sheet } from "./page.ts";

const ROW_cm = 0.78;
/** A longer name is cut: its number stands before it. */
const NAME_LETTERS = 14;
/** A reading so soon after departure, or so soon before the return, is that of packing or of home. */
const NEAR_h = 1;

/** Readings by pencil: an inspector's log with what was done about it, where the trip is inspected. */
export function logPage(book: Book): Sheet[] {
  const { forecast, options } = book;
  const inspected = forecast.result.limit.profile === "inspected";
  const table: Table = {
    columns: inspected
      ? [
          { head: "Day, time", wide_frac: 0.22 },
          { head: "Cooler", wide_frac: 0.16 },
          { head: "Air", wide_frac: 0.08 },
          { head: "Food: which, warmest", wide_frac: 0.2 },
          { head: "Initials", wide_frac: 0.1 },
          { head: "What was done about it", wide_frac: 0.24 },
        ]
      : [
          { head: "Day, time", wide_frac: 0.22 },
          { head: "Cooler", wide_frac: 0.17 },
          { head: "Air", wide_frac: 0.1 },
          { head: "Food: which, warmest", wide_frac: 0.23 },
          { head: "Ice left: full ¾ ½ ¼ slush", wide_frac: 0.18 },
          { head: "Initials", wide_frac: 0.1 },
        ],
    rows: beginnings(book).map(([when, cooler]) => ({
      cells: [when, cooler, "", "", "", ""],
      least_cm: ROW_cm,
      kind: "grid",
    })),
  };
  const how = paragraph(
    "Read the warmest food, not the ice. Hold the probe until it is still. A reading above the limit starts the food's warm time; a reading that is left out counts as not known. More readings are better; the agency in charge may ask for them.",
    options.paper,
  );
  return pages("Temperature log", inspected ? "Inspector's log" : "Temperature log", [how, table], book);
}

/**
 * A row for every reading of every cooler that is in use: when packed, at breakfast and dinner (an inspected trip at lunch
 * too, common practice), and at home. A cooler that was emptied into another one has no further rows.
 */
function beginnings(book: Book): [when: string, cooler: string][] {
  const { forecast, voice } = book;
  const { trip, result } = forecast;
  const end_h = result.trip.hours;
  const meals: readonly string[] =
    result.limit.profile === "inspected" ? ["breakfast", "lunch", "dinner"] : ["breakfast", "dinner"];
  const clocks = voice.clock.meals.filter(([name]) => meals.includes(name)).map(([, clock_s]) => clock_s);
  const read = atClocks_s(trip, clocks)
    .map((t_s) => t_s / 3600)
    .filter((t_h) => t_h > NEAR_h && t_h < end_h - NEAR_h);
  const at: readonly (readonly [t_h: number, when: string])[] = [
    [0, "packed"],
    ...read.map((t_h) => [t_h, whenWords(t_h, voice.clock)] as const),
    [end_h, "at home"],
  ];
  return at.flatMap(([t_h, when]) =>
    result.coolers.flatMap(({ name }, i): [string, string][] => {
      const merge = trip.events.find((event) => event.do === "merge" && event.from === i);
      if (isUnused(book, i) || (merge !== undefined && merge.t_s / 3600 <= t_h)) return [];
      return [[when, `${numberOf(book, i)} ${cut(printable(name), NAME_LETTERS)}`]];
    }),
  );
}

/** "Sat 1, dinner". */
function whenWords(t_h: number, clock: TripClock): string {
  const { weekday, day, sinceMidnight_min } = localTime(t_h, clock);
  const meal = clock.meals.find(([, clock_s]) => Math.round(clock_s / 60) === sinceMidnight_min);
  return `${weekday} ${day}, ${meal?.[0] ?? clockWords(sinceMidnight_min)}`;
}
