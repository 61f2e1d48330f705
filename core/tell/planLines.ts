import type { IceRun, Merge, PlanResult } from "../forecast/planResult.ts";
import { pieceWords } from "../plan/pieceWords.ts";
import type { Trip } from "../trip/types.ts";
import { momentIn } from "./book/book.ts";
import { gainHours } from "./gainWords.ts";
import { hanging } from "./lines.ts";
import { eachWords } from "./shoppingText.ts";
import type { Voice } from "./voice.ts";
import { nameWords, printable } from "./words.ts";

/** What a plan decided, beside the ice: where everything goes, ice runs, merges, and what else was tried. */
export function planLines(plan: PlanResult, trip: Trip, voice: Voice): string[] {
  const way = [
    ...plan.iceRuns.map((run) => runWords(run, trip, voice)),
    ...plan.merges.map((merge) => mergeWords(merge, voice)),
    ...plan.otherwise.map(({ says }) => `Not taken: ${printable(says)}.`),
    ...plan.waysOut.map(
      ({ says, holds }) => `Or ${printable(says)}${holds ? "" : " (not enough by itself)"}.`,
    ),
    bookWords(plan),
  ];
  return [
    voice.paint.strong("Where everything goes, and what happens on the way"),
    ...placeLines(plan, (head, says) => hanging(`  ${head}: `, says, voice.width)),
    ...way.flatMap((text) => hanging("  ", text, voice.width)),
  ];
}

function runWords(run: IceRun, trip: Trip, voice: Voice): string {
  const { leaveBy, at, where, pieces, each_kg, form, into, fallback } = run;
  const piece = { ...run, cooler: into, by: at, weight_kg: pieces * each_kg };
  const what = pieceWords(pieces, printable(eachWords(piece, trip, voice)), form);
  return `Leave by ${momentIn(leaveBy, voice.clock)} for ${what} from ${printable(where)}, into ${printable(into)}. ${printable(fallback)}`;
}

function mergeWords({ at, from, into, gain_h, why }: Merge, voice: Voice): string {
  return `${momentIn(at, voice.clock)}: empty ${printable(from)} into ${printable(into)}, ice ${gainHours(gain_h)}. ${printable(why)}`;
}

/** Items by cooler, with what is frozen marked. */
function placeLines(plan: PlanResult, said: (head: string, says: string) => string[]): string[] {
  const frozen = new Set(plan.states.flatMap(({ item, state }) => (state === "frozen" ? [item] : [])));
  const places = new Map<string, string[]>();
  for (const { item, cooler } of plan.assign)
    places.set(cooler, [...(places.get(cooler) ?? []), `${item}${frozen.has(item) ? " (frozen)" : ""}`]);
  return [...places].flatMap(([cooler, items]) => said(printable(cooler), nameWords(items, items.length)));
}

function bookWords({ prep, book }: PlanResult): string {
  const acts = prep.length === 0 ? "" : `${prep.length} things to do before you go, `;
  const where =
    book === null ? "are in the trip book: ask for it with --out DIR" : `are in ${printable(book)}`;
  return `${acts}pack maps, daily cards and labels ${where}.`;
}
