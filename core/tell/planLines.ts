import type { IceRun, Merge, PlanResult } from "../forecast/planResult.ts";
import { pieceWords } from "../plan/pieceWords.ts";
import type { Trip } from "../trip/types.ts";
import { momentIn } from "./book/book.ts";
import { gainHours } from "./gainWords.ts";
import { cut, hanging } from "./lines.ts";
import { eachWords } from "./shoppingText.ts";
import type { Voice } from "./voice.ts";
import { momentWords, nameWords, printable } from "./words.ts";

/** Why of a run that the trip file has already. */
export const FILE_RUN = "in your file";

/** What is done on the way in the order of time: seals, ice runs, merges; then what else was tried. */
export function wayLines(plan: PlanResult, trip: Trip, voice: Voice): string[] {
  const acts = [
    ...trip.coolers.flatMap(({ name, sealedUntil_s }) =>
      sealedUntil_s === null
        ? []
        : [
            {
              at: "",
              says: `${printable(name)} stays taped shut until ${momentWords(sealedUntil_s / 3600, voice.clock)}.`,
            },
          ],
    ),
    ...plan.iceRuns.map((run) => ({ at: run.leaveBy, says: runWords(run, trip, voice) })),
    ...plan.merges.map((merge) => ({ at: merge.at, says: mergeWords(merge, voice) })),
  ].sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  const tried = [
    ...plan.otherwise.map((one) => `Not taken: ${otherwiseWords(one)}.`),
    ...plan.waysOut.map(
      ({ says, holds }) => `Or ${printable(says)}${holds ? "" : " (not enough by itself)"}.`,
    ),
  ];
  if (acts.length + tried.length === 0) return [];
  return [
    voice.paint.strong("On the way"),
    ...[...acts.map(({ says }) => says), ...tried].flatMap((text) => hanging("  ", text, voice.width)),
  ];
}

function runWords(run: IceRun, trip: Trip, voice: Voice): string {
  const { leaveBy, at, where, pieces, each_kg, form, into, fallback, why } = run;
  const piece = { ...run, cooler: into, by: at, weight_kg: pieces * each_kg };
  const what = pieceWords(pieces, printable(eachWords(piece, trip, voice)), form);
  const says =
    why === FILE_RUN
      ? `${momentIn(at, voice.clock)}: ${what} into ${printable(into)}, as you wrote.`
      : `Leave by ${momentIn(leaveBy, voice.clock)} for ${what} from ${printable(where)}, into ${printable(into)}.`;
  return `${says} ${printable(fallback)}`;
}

function mergeWords({ at, from, into, gain_h, why }: Merge, voice: Voice): string {
  return `${momentIn(at, voice.clock)}: empty ${printable(from)} into ${printable(into)}, ice ${gainHours(gain_h)}. ${printable(why)}`;
}

/** What another assignment would cost in ice, and what it would change in hours with no more ice than is planned. */
export function otherwiseWords({ says, foodGain_h, iceGain_h }: PlanResult["otherwise"][number]): string {
  const hours = [
    ...(iceGain_h === null ? [] : [`ice ${gainHours(iceGain_h)}`]),
    ...(foodGain_h === null ? [] : [`food within its limit ${gainHours(foodGain_h)}`]),
  ];
  const same = hours.length === 0 ? "" : `; with the ice planned now it would change: ${hours.join("; ")}`;
  return `${printable(says)}${same}`;
}

/** A longer name of a cooler is cut where its food is listed. */
const NAME_COLUMNS = 24;

/** Items by cooler, with what is frozen marked. */
export function placeLines(plan: PlanResult, voice: Voice): string[] {
  const frozen = new Set(plan.states.flatMap(({ item, state }) => (state === "frozen" ? [item] : [])));
  const places = new Map<string, string[]>();
  for (const { item, cooler } of plan.assign)
    places.set(cooler, [...(places.get(cooler) ?? []), `${item}${frozen.has(item) ? " (frozen)" : ""}`]);
  if (places.size === 0) return [];
  return [
    voice.paint.strong("Where everything goes"),
    ...[...places].flatMap(([cooler, items]) =>
      hanging(
        `  ${cut(printable(cooler), NAME_COLUMNS)}: `,
        `${nameWords(items, items.length)}.`,
        voice.width,
      ),
    ),
  ];
}

/** Where the rest stands, for whoever packs. */
export function fileLines({ prep, book, file }: PlanResult, voice: Voice): string[] {
  const acts = prep.length === 0 ? "" : `${prep.length} things to do before you go, `;
  const where =
    book === null ? "stand in the trip book: ask for it with --out DIR" : `stand in ${printable(book)}`;
  const says = `${acts}pack maps, daily cards and labels ${where}.`;
  return [
    ...hanging("", `${says.slice(0, 1).toUpperCase()}${says.slice(1)}`, voice.width),
    ...(file === null ? [] : hanging("", `The planned trip: ${printable(file)}`, voice.width)),
  ];
}
