import { group } from "d3-array";
import { drainAdvice } from "../../plan/drainLine.ts";
import { pieceWords } from "../../plan/pieceWords.ts";
import { localInstant_ms } from "../../sky/localTime.ts";
import { clockWords, dayStart_h, durationWords, localTime, nameWords, printable } from "../words.ts";
import type { Book } from "./book.ts";
import { type Piece, paragraph, type Table } from "./flow.ts";
import { TICK } from "./html.ts";
import { pages, type Sheet } from "./page.ts";

/** One thing to do on the way. */
interface Act {
  t_h: number;
  clock: string;
  does: string;
}

/**
 * The way in the order in which it is done: where everything stands, seals, ice, merges, meltwater, what thaws. Meals
 * have cards of their own.
 */
export function dayPages(book: Book): Sheet[] {
  const { voice, options } = book;
  const { length_h } = voice.clock;
  const acts = [...moveActs(book), ...coolerActs(book), ...iceActs(book), ...thawActs(book)]
    .filter(({ t_h }) => t_h >= 0 && t_h <= length_h)
    .sort((a, b) => a.t_h - b.t_h);
  const byDay = group(acts, ({ t_h }) => localTime(t_h, voice.clock).day);
  const drains = drainWords(book);
  const days = [...new Set([...byDay.keys(), ...drains.keys()])].sort((a, b) => a - b);
  const table: Table = {
    columns: [
      { head: "", wide_frac: 0.05 },
      { head: "Time", wide_frac: 0.1, kind: "strong" },
      { head: "Do", wide_frac: 0.85 },
    ],
    rows: days.flatMap((day) => [
      dayRow(day, drains.get(day), book),
      ...(byDay.get(day) ?? []).map(({ clock, does }) => ({
        cells: [{ html: TICK, lines: 1 }, clock, does],
      })),
    ]),
  };
  const pieces: Piece[] = [
    paragraph(
      "What is taken out for a meal stands on the daily cards. Read the temperatures whenever a lid is open. Why water is let out stands on the page of each cooler.",
      options.paper,
    ),
    table,
  ];
  return pages("Day by day", "On the way, day by day", pieces, book);
}

/** The head of a day, with what is to be drained some time on it. */
function dayRow(day: number, drains: string | undefined, { voice }: Book): Table["rows"][number] {
  const { weekday } = localTime(Math.max(0, dayStart_h(day, voice.clock)), voice.clock);
  const says = drains === undefined ? "" : `. Let the water out of ${drains}`;
  return {
    cells: [{ html: drains === undefined ? "" : TICK, lines: 1 }, "", `${weekday}, day ${day}${says}`],
    kind: "band",
  };
}

function actAt(t_h: number, does: string, { voice }: Book): Act {
  return { t_h, clock: clockWords(localTime(t_h, voice.clock).sinceMidnight_min), does };
}

const hoursOf = (iso: string, { voice }: Book): number =>
  (localInstant_ms(iso, voice.clock.timezone) - voice.clock.depart_ms) / 3_600_000;

function moveActs(book: Book): Act[] {
  const { trip } = book.forecast;
  const legs = trip.legs.map(({ from_s, place, shade_frac }) => {
    const shade = (shade_frac ?? 0) > 0 ? `, shade ${Math.round(shade_frac! * 100)} %` : "";
    return actAt(
      from_s / 3600,
      from_s === 0 ? `Depart: coolers in the ${place}${shade}.` : `Coolers into: ${place}${shade}.`,
      book,
    );
  });
  return [...legs, actAt(book.voice.clock.length_h, "Return: measure what comes home; see Close-out.", book)];
}

/** Seals, merges, and what the file does to a cooler. */
function coolerActs(book: Book): Act[] {
  const { trip } = book.forecast;
  const name = (i: number): string => printable(trip.coolers[i]!.name);
  const seals = trip.coolers.flatMap(({ sealedUntil_s }, i) =>
    sealedUntil_s === null
      ? []
      : [actAt(sealedUntil_s / 3600, `${name(i)}: the lid may be opened from now on, not before.`, book)],
  );
  const events = trip.events.flatMap((event) => {
    const at = (does: string): Act[] => [actAt(event.t_s / 3600, does, book)];
    if (event.do === "merge")
      return at(
        `Empty ${name(event.from)} into ${name(event.into)}: raw lowest; wipe out ${name(event.from)}, lid open.`,
      );
    if (event.do === "drain") return at(`${name(event.cooler)}: let the water out.`);
    if (event.do === "cover") return at(`${name(event.cooler)}: cover now: ${event.cover}.`);
    if (event.do === "take out") {
      const { name: item } = trip.food.find(({ id }) => id === event.item)!;
      return at(`Take out ${printable(item)}.`);
    }
    if (event.do === "wet cloth") return at(`${name(event.cooler)}: wet the cloth.`);
    if (event.do === "move")
      return at(`${name(event.cooler)}: into ${event.place}, until ${momentOf(event.until_s / 3600, book)}.`);
    return [];
  });
  return [...seals, ...events];
}

const momentOf = (t_h: number, { voice }: Book): string => {
  const { weekday, sinceMidnight_min } = localTime(t_h, voice.clock);
  return `${weekday} ${clockWords(sinceMidnight_min)}`;
};

/** When to leave for ice, and when it goes in. */
function iceActs(book: Book): Act[] {
  const { plan, forecast } = book;
  const { trip } = forecast;
  const leave = plan.iceRuns
    .filter((run) => run.leaveBy < run.at)
    .map((run) =>
      actAt(
        hoursOf(run.leaveBy, book),
        `Leave for ice at the latest: ${printable(run.where)}, for ${printable(run.into)}.`,
        book,
      ),
    );
  const into = trip.ice.flatMap(({ putIn_s, pieces, each, form, cooler }) =>
    putIn_s === null
      ? []
      : [
          actAt(
            putIn_s / 3600,
            `${pieceWords(pieces, printable(each), form)} into ${printable(trip.coolers[cooler]!.name)}.`,
            book,
          ),
        ],
  );
  return [...leave, ...into];
}

function thawActs(book: Book): Act[] {
  return book.plan.pull.flatMap(({ at, thaw }) =>
    thaw.map((one) => {
      const takes = one.takes_h?.p50 ?? null;
      const long = takes === null ? "" : `; it takes about ${durationWords(Math.round(takes))}`;
      return actAt(
        hoursOf(at, book),
        `Thaw: ${printable(one.item)} from ${printable(one.from)} to ${printable(one.to)}${long}.`,
        book,
      );
    }),
  );
}

/** Coolers whose water is better let out, by day. */
function drainWords({ forecast }: Book): Map<number, string> {
  const drained = drainAdvice(forecast.trip, forecast).filter(({ does }) => does === "drain");
  return new Map(
    [...group(drained, ({ day }) => day)].map(([day, some]) => [
      day,
      nameWords(
        some.map(({ cooler }) => cooler),
        9,
      ),
    ]),
  );
}
