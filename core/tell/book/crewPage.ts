import { drainAdvice } from "../../plan/drainLine.ts";
import { dayAt } from "../../plan/moment.ts";
import { localInstant_ms } from "../../sky/localTime.ts";
import type { CrewMember, Duty } from "../../trip/types.ts";
import { dayStart_h, localTime, printable } from "../words.ts";
import type { Book } from "./book.ts";
import { heading, paragraph, type Table } from "./flow.ts";
import { pages, type Sheet } from "./page.ts";

const ROW_cm = 0.95;
const SIGN_cm = 1.2;

const heads: readonly (readonly [Duty, string])[] = [
  ["food", "Food out and back"],
  ["readings", "Reads and logs"],
  ["water", "Meltwater"],
  ["ice", "Ice run"],
  ["washing", "Hands, boards, lids"],
];

/** What has to be looked at before the trip goes, and has a line to sign. */
const checks: readonly string[] = [
  "Plan, amounts and allergens",
  "Agency asked, order of the day read",
  "Packed by the pack pages, weighed",
  "May leave",
];

/** Nothing of the kind to be done that day. */
const NONE = "–";

/**
 * Who does what on which day: named people take turns in what they do, and where nobody is named there is room for a pencil;
 * below, lines for whoever looked the plan over. A signature says who looked, and certifies nothing.
 */
export function crewPage(book: Book): Sheet[] {
  const { forecast, options } = book;
  const { trip } = forecast;
  const last = dayAt(trip, trip.duration_s);
  const water = new Set(
    drainAdvice(trip, forecast).flatMap(({ day, does }) => (does === "drain" ? [day] : [])),
  );
  const runs = new Set(book.plan.iceRuns.map(({ at }) => dayOfIso(book, at)));
  const isDue = (duty: Duty, day: number): boolean =>
    duty === "water" ? water.has(day) : duty === "ice" ? runs.has(day) : true;
  const turns = new Map<Duty, number>();
  const table: Table = {
    columns: [{ head: "Day", wide_frac: 0.15 }, ...heads.map(([, head]) => ({ head, wide_frac: 0.17 }))],
    rows: Array.from({ length: last }, (_, k) => ({
      cells: [
        dayWords(book, k + 1),
        ...heads.map(([duty]) => (isDue(duty, k + 1) ? turnOf(trip.party.crew, duty, turns) : NONE)),
      ],
      least_cm: ROW_cm,
      kind: "grid",
    })),
  };
  const how = `Who is named does it that day; an empty field is for a pencil, ${NONE} means nothing of the kind is planned. Whoever takes food out also puts it back, lid shut, raw food last; whoever reads writes it down at once.`;
  const signed =
    "A signature says who looked, and when. It certifies nothing: the plan is reckoned, not measured, and the agency's order and local codes come first.";
  return pages(
    "Crew",
    "Who does what",
    [
      paragraph(how, options.paper),
      table,
      heading("Looked over by"),
      paragraph(signed, options.paper),
      approval(),
    ],
    book,
  );
}

function approval(): Table {
  return {
    columns: [
      { head: "What", wide_frac: 0.36 },
      { head: "Name", wide_frac: 0.24 },
      { head: "Signature", wide_frac: 0.24 },
      { head: "Day, time", wide_frac: 0.16 },
    ],
    rows: checks.map((what) => ({ cells: [what, "", "", ""], least_cm: SIGN_cm, kind: "grid" })),
  };
}

/** The next one of those who do this; nothing where nobody was named for it. */
function turnOf(crew: readonly CrewMember[], duty: Duty, turns: Map<Duty, number>): string {
  const able = crew.filter(({ does }) => does.includes(duty));
  if (able.length === 0) return "";
  const turn = turns.get(duty) ?? 0;
  turns.set(duty, turn + 1);
  return printable(able[turn % able.length]!.name);
}

/** "Sat 1": by the noon of that day. */
const dayWords = ({ voice }: Book, day: number): string =>
  `${localTime(dayStart_h(day, voice.clock) + 12, voice.clock).weekday} ${day}`;

function dayOfIso({ forecast, voice }: Book, iso: string): number {
  const { depart_ms, timezone } = voice.clock;
  return dayAt(forecast.trip, (localInstant_ms(iso, timezone) - depart_ms) / 1000);
}
