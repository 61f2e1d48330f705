import { group, sum } from "d3-array";
import { Temporal } from "temporal-polyfill";
import type { IcePiece, PlanResult } from "../forecast/planResult.ts";
import { FROM_FILE, usualWhere } from "../plan/offer.ts";
import { pieceWords } from "../plan/pieceWords.ts";
import { massWords } from "../quantity/show.ts";
import type { Trip, TripIce } from "../trip/types.ts";
import { hanging } from "./lines.ts";
import type { Voice } from "./voice.ts";
import { clockWords, localTime, nameWords, printable, WEEKDAYS } from "./words.ts";

/** The ice of a plan, a line a purchase: what to buy, what to freeze at home, what comes on the way, and what it costs. */
export function shoppingLines(plan: PlanResult, trip: Trip, voice: Voice): string[] {
  const later = trip.ice.filter(({ putIn_s }) => putIn_s !== null);
  if (plan.ice.length === 0 && later.length === 0) return ["No ice to get."];
  const bought = plan.ice.map((piece) => ({ ...piece, where: whereOf(piece, trip) }));
  const key = (piece: IcePiece): string =>
    [piece.form, piece.each_kg.toFixed(3), piece.where, piece.by].join(" | ");
  const lines = hanging("", totalWords(plan, later, voice), voice.width, voice.paint.strong);
  for (const same of group(bought, key).values())
    lines.push(...hanging("  ", purchaseWords(same, trip, voice), voice.width));
  for (const same of group(later, ({ form, each }) => `${form} ${each}`).values())
    lines.push(...hanging("  ", laterWords(same, trip, voice), voice.width));
  for (const text of reserveLines(plan, voice)) lines.push(...hanging("  ", text, voice.width));
  return lines;
}

/**
 * The ice to keep ready for a big warm load, in pieces and beside all other ice: a line where it asks for any, or where
 * what fits is too little; none where the ice that is planned is reserve enough or no such load is planned for.
 *
 * @param cooler only if it is that one's; undefined: whichever it is
 */
export function reserveLines({ warmLoad }: PlanResult, { units }: Voice, cooler?: string): string[] {
  if (warmLoad === null || (cooler !== undefined && cooler !== warmLoad.cooler)) return [];
  const { pieces, each, form, holds } = warmLoad.reserve;
  const [load, into] = [printable(warmLoad.name), printable(warmLoad.cooler)];
  const short = holds ? "" : " It is what fits, and too little: see what is said of the load.";
  if (pieces === 0)
    return holds ? [] : [`Reserve for ${load}: none fits in ${into}, and there is too little.`];
  const what = pieceWords(pieces, printable(each), form);
  return [
    `Reserve for ${load}: ${what} (${massWords(warmLoad.reserveIce_kg, units)}) more in ${into} from departure on, beside the ice listed.${short}`,
  ];
}

/** Where a piece that the file has aboard is had: as the file's supply has it, else where such ice usually comes from. */
export function whereOf(piece: IcePiece, trip: Trip): string {
  if (piece.where !== FROM_FILE) return piece.where;
  return soldAs(piece, trip)?.where ?? usualWhere(piece.form as TripIce["form"]);
}

function soldAs(piece: IcePiece, { supply }: Trip): Trip["supply"][number] | undefined {
  const sold = supply.filter(
    ({ form, each_kg }) => form === piece.form && Math.abs(each_kg - piece.each_kg) < 1e-3 * piece.each_kg,
  );
  const before = sold.filter(({ when_s }) => when_s === null);
  return sold.find(({ where }) => where === piece.where) ?? before[0] ?? sold[0];
}

/** What one piece is called where it is sold, or as the file has it aboard. */
export function eachWords(piece: IcePiece, trip: Trip, voice: Voice): string {
  const aboard = trip.ice.find(
    (lot) =>
      lot.form === piece.form && Math.abs(lot.mass_kg / lot.pieces - piece.each_kg) < 1e-3 * piece.each_kg,
  );
  return soldAs(piece, trip)?.each ?? aboard?.each ?? massWords(piece.each_kg, voice.units);
}

function purchaseWords(same: readonly IcePiece[], trip: Trip, voice: Voice): string {
  const first = same[0]!;
  const pieces = sum(same, (piece) => piece.pieces);
  const what = pieceWords(pieces, printable(eachWords(first, trip, voice)), first.form);
  const into = [...group(same, (piece) => piece.cooler)]
    .map(([cooler, some]) => `${sum(some, (piece) => piece.pieces)} ${printable(cooler)}`)
    .join(", ");
  const cost = costOf(same.map(({ price }) => price));
  if (first.where === "home") {
    const price = cost > 0 ? ` (${cost.toFixed(2)})` : "";
    return `Freeze ${what.replace("frozen ", "")}${price} at home beforehand (deep-freeze two days): ${into}.`;
  }
  const price = same.every((piece) => piece.price === null)
    ? " (price not given)"
    : cost > 0
      ? ` (${cost.toFixed(2)})`
      : "";
  return `Buy ${what}${price}${placeWords(printable(first.where))}${byWords(first.by)}: ${into}.`;
}

/** "at the grocery", "from town", "from ice stand at the gate". */
function placeWords(where: string): string {
  if (where === "") return "";
  return /^[a-z]+$/.test(where) && where !== "town" ? ` at the ${where}` : ` from ${where}`;
}

/** " before Fri 09:00", from a local ISO time; nothing where there is none. */
function byWords(iso: string): string {
  if (!/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}/.test(iso)) return "";
  const { dayOfWeek, hour, minute } = Temporal.PlainDateTime.from(iso);
  return ` before ${WEEKDAYS[dayOfWeek - 1]} ${clockWords(hour * 60 + minute)}`;
}

function laterWords(same: readonly TripIce[], trip: Trip, { clock }: Voice): string {
  const days = [...new Set(same.map(({ putIn_s }) => localTime(putIn_s! / 3600, clock).day))].map(String);
  const what = pieceWords(
    sum(same, ({ pieces }) => pieces),
    printable(same[0]!.each),
    same[0]!.form,
  );
  const cost = costOf(same.map(({ price, pieces }) => (price === null ? null : price * pieces)));
  const into = [...new Set(same.map(({ cooler }) => trip.coolers[cooler]!.name))];
  const price = cost > 0 ? ` (${cost.toFixed(2)})` : "";
  return `On the way: ${what}, ${days.length > 1 ? "days" : "day"} ${nameWords(days, 9)}${price}: ${nameWords(into)}.`;
}

const costOf = (prices: readonly (number | null)[]): number => sum(prices, (price) => price ?? 0);

/** Departure and way apart, then both; a price that nobody gave is said to be missing. */
export function totalWords(plan: PlanResult, later: readonly TripIce[], { units }: Voice): string {
  const now = costOf(plan.ice.map(({ price }) => price));
  const then = costOf(later.map(({ price, pieces }) => (price === null ? null : price * pieces)));
  const isOpen = [...plan.ice, ...later].some(({ price }) => price === null);
  const pieces = sum(plan.ice, (piece) => piece.pieces);
  const count = `${pieces} ${pieces === 1 ? "piece" : "pieces"}, ${massWords(plan.weight_kg, units)}`;
  const parts = [pieces === 0 ? "Ice to get before you go: none" : `Ice to get before you go: ${count}`];
  if (now > 0) parts[0] += `, ${now.toFixed(2)}`;
  if (later.length > 0) {
    const weight = massWords(
      sum(later, ({ mass_kg }) => mass_kg),
      units,
    );
    parts.push(`on the way ${weight}${then > 0 ? `, ${then.toFixed(2)}` : ""}`);
    if (now > 0 && then > 0) parts.push(`${(now + then).toFixed(2)} in all`);
  }
  if (isOpen) parts.push(now + then > 0 ? "some prices not given" : "prices not given");
  return `${parts.join("; ")}.`;
}
