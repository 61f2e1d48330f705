import { localTime } from "../words.ts";
import { type Book, numberOf } from "./book.ts";
import { paragraph, type Table } from "./flow.ts";
import { pages, type Sheet } from "./page.ts";

/** Rows written in beforehand at most; a longer trip takes copies of an empty sheet. */
const MOST_ROWS = 84;
const ROW_cm = 0.78;

/** Readings by pencil: an inspector's log with what was done about it, where the trip is inspected. */
export function logPage(book: Book): Sheet[] {
  const { forecast, options } = book;
  const inspected = forecast.result.limit.profile === "inspected";
  const table: Table = {
    columns: inspected
      ? [
          { head: "Day, time", wide_frac: 0.17 },
          { head: "Cooler", wide_frac: 0.16 },
          { head: "Air", wide_frac: 0.09 },
          { head: "Food: which, warmest", wide_frac: 0.22 },
          { head: "Initials", wide_frac: 0.1 },
          { head: "What was done about it", wide_frac: 0.26 },
        ]
      : [
          { head: "Day, time", wide_frac: 0.19 },
          { head: "Cooler", wide_frac: 0.18 },
          { head: "Air", wide_frac: 0.1 },
          { head: "Food: which, warmest", wide_frac: 0.25 },
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
    "Read the warmest food, not the ice. Hold the probe until it is still. A reading above the limit starts the food's warm time; a reading that is left out counts as not known.",
    options.paper,
  );
  return pages("Temperature log", inspected ? "Inspector's log" : "Temperature log", [how, table], book);
}

/** Morning and evening of every day for every cooler, as long as that is not too much. */
function beginnings(book: Book): [when: string, cooler: string][] {
  const { forecast, voice } = book;
  const days = localTime(forecast.result.trip.hours, voice.clock).day;
  const coolers = forecast.result.coolers.map(({ name }, i) => `${numberOf(book, i)} ${name}`);
  const rows: [string, string][] = [];
  for (let day = 1; day <= days; day++)
    for (const part of ["morning", "evening"])
      for (const cooler of coolers) rows.push([`${day} ${part}`, cooler]);
  return rows.slice(0, MOST_ROWS);
}
