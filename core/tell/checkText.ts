import { pieceWords } from "../plan/pieceWords.ts";
import { temperatureWords } from "../quantity/show.ts";
import type { UnitSystem } from "../quantity/units.ts";
import type { Problem, Trip, TripCooler } from "../trip/types.ts";
import { asText } from "./forecastText.ts";
import { cut, hanging, nColumns } from "./lines.ts";
import { clockOf, momentWords, printable } from "./words.ts";

const WIDTH = 80;

/**
 * Every mistake in a file, one a paragraph, each with the place to mend: "trip.yaml:12  coolers[0].size: must be …, got
 * …; did you mean …?". Editors and terminals make the first word a link, so it is never broken.
 */
export function problemsText(problems: readonly Problem[], file: string): string {
  const name = printable(file);
  const count = problems.length === 1 ? "1 problem" : `${problems.length} problems`;
  const lines = problems.flatMap((problem) => {
    const place = problem.line === null ? name : `${name}:${problem.line}`;
    if (nColumns(place) > WIDTH / 2) return [place, ...hanging("  ", problemWords(problem), WIDTH)];
    return hanging(`${place}  `, problemWords(problem), WIDTH);
  });
  return asText([[`${count} in ${name}`, ...lines]]);
}

function problemWords({ path, must, got, near }: Problem): string {
  const where = path === "" ? "" : `${printable(path)}: `;
  const guess = near === null ? "" : `; did you mean ${printable(near)}?`;
  return `${where}must ${mustWords(must)}, got ${printable(got)}${guess}`;
}

/** `must` may or may not begin with its verb. */
function mustWords(must: string): string {
  const words = printable(must);
  return words.startsWith("be ") ? words : `be ${words}`;
}

/** A trip that was read without a mistake: what it says in short, and everything that was assumed. */
export function checkText(trip: Trip, units: UnitSystem): string {
  const clock = clockOf(trip);
  const { adults, children, vulnerable } = trip.party;
  const isAssumed = trip.assumed.some(({ path }) => path === "party.vulnerable");
  const among = isAssumed
    ? ", reckoned as if somebody easily harmed were among them (you did not say)"
    : ", among them somebody easily harmed";
  const party = `${adults} adults, ${children} children${vulnerable ? among : ""}`;
  const head = [
    cut(printable(trip.title), WIDTH),
    ...hanging("", `${momentWords(0, clock)} to ${momentWords(clock.length_h, clock)}, ${party}`, WIDTH),
    `limit ${temperatureWords(trip.limit.limit_C, units)} (${trip.limit.profile} profile)`,
  ];
  const coolers = trip.coolers.flatMap((cooler, i) => hanging("", coolerWords(trip, cooler, i), WIDTH));
  const dry = trip.food.filter((food) => food.cooler === null).length;
  if (dry > 0) coolers.push(`no cooler: ${dry} ${dry === 1 ? "item" : "items"}`);
  const assumed = trip.assumed.flatMap((one) => {
    const range =
      one.range === null ? "" : ` (could be ${printable(one.range[0])} to ${printable(one.range[1])})`;
    return hanging(
      "  ",
      `${printable(one.path)}: ${printable(one.value)}${range} – ${printable(one.why)}`,
      WIDTH,
    );
  });
  const count =
    trip.assumed.length === 1 ? "We assumed 1 thing:" : `We assumed ${trip.assumed.length} things:`;
  return asText([["No problem found.", ...head], coolers, assumed.length === 0 ? [] : [count, ...assumed]]);
}

function coolerWords(trip: Trip, cooler: TripCooler, index: number): string {
  const foods = trip.food.filter((food) => food.cooler === index).length;
  const ice = trip.ice
    .filter((lot) => lot.cooler === index)
    .map((lot) => pieceWords(lot.pieces, printable(lot.each), lot.form))
    .join(", ");
  const holds = `${foods} ${foods === 1 ? "item" : "items"} of food and drink`;
  return `${cut(printable(cooler.name), 40)}, ${printable(cooler.size)}: ${holds}; ${ice === "" ? "no ice" : ice}`;
}
