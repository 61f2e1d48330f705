import { group } from "d3-array";
import type { PrepAct } from "../../forecast/planResult.ts";
import { escaped, printable } from "../words.ts";
import { type Book, dayIn, timeIn } from "./book.ts";
import { lineCount, SHEET, type Table } from "./flow.ts";
import { element, TICK } from "./html.ts";
import { lastingWords } from "./lasting.ts";
import { pages, type Sheet } from "./page.ts";

/** What to do before departure, by day and clock, each with a box to tick, its reason and how long it takes by itself. */
export function countdownPage(book: Book): Sheet[] {
  const { plan, voice } = book;
  if (plan.prep.length === 0) return [];
  const acts = [...plan.prep].sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  const days = [...group(acts, ({ at }) => dayIn(at, voice.clock))];
  const table: Table = {
    columns: [
      { head: "", wide_frac: 0.05 },
      { head: "Time", wide_frac: 0.09, kind: "strong" },
      { head: "Do", wide_frac: 0.64 },
      { head: "Takes by itself", wide_frac: 0.22 },
    ],
    rows: days.flatMap(([day, some]) => [
      { cells: ["", { html: "", lines: 1 }, day, ""], kind: "band" },
      // The reason of several acts in a row is told under the last of them.
      ...some.map((act, i) => ({
        cells: cellsOf(some[i + 1]?.why === act.why ? { ...act, why: "" } : act, book),
      })),
    ]),
  };
  const first = acts[0]!;
  return pages(
    "Countdown",
    `Countdown: begins ${dayIn(first.at, voice.clock)}, ${timeIn(first.at, voice.clock)}`,
    [table],
    book,
  );
}

function cellsOf(
  { at, does, why, lasts_h }: PrepAct,
  { voice, options }: Book,
): Table["rows"][number]["cells"] {
  const wide_cm = 0.64 * SHEET[options.paper].wide_cm - 0.3;
  const reason = printable(why);
  const html =
    element("b", "", escaped(does)) + (reason === "" ? "" : element("span", "why", escaped(reason)));
  const lines = lineCount(does, wide_cm, 1.12) + (reason === "" ? 0 : lineCount(reason, wide_cm));
  return [
    { html: TICK, lines: 1 },
    timeIn(at, voice.clock),
    { html, lines },
    lasts_h === null ? "" : lastingWords(lasts_h),
  ];
}
