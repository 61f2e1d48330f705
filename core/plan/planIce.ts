import { forecast } from "../forecast/forecast.ts";
import type { IcePiece, PlanResult } from "../forecast/planResult.ts";
import type { Result, Warning } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { volumeWords } from "../quantity/show.ts";
import { dryIceCaution } from "../safety/dryIce.ts";
import type { Trip, TripIce } from "../trip/types.ts";
import { isFreezerFull } from "./freezer.ts";
import { FREEZER_FRAC } from "./freezerRoom.ts";
import { layWords } from "./lay.ts";
import { judge } from "./need.ts";
import {
  asPiece,
  FROM_FILE,
  iceWords,
  isReplaceable,
  type Offer,
  offersOf,
  offerWords,
  packedWords,
} from "./offer.ts";
import { type Fills, fillTrip, type PlanOptions, Scene } from "./scene.ts";
import { type EnoughIce, shortWarnings } from "./shortage.ts";
import { cameTooLate, emptied_s, stopsOf } from "./whereabouts.ts";

/** The ice plan of a trip; assignment, states and everything else stay as written. */
export interface IcePlan {
  /** The middle case of the planned trip, with `result.plan` filled in. */
  forecast: Forecast;
  /** What must be added to the file, aboard at departure. */
  addedIce: readonly TripIce[];
  enough: readonly EnoughIce[];
  /** Every cooler keeps its food cold and its ice to the end, in the middle case. */
  holds: boolean;
}

/**
 * The least ice that every cooler would have needed, as pieces that can be had, counted from nothing: the written ice
 * of departure is set aside, later ice stays. It changes nothing.
 */
export function enoughIce(trip: Trip, options: PlanOptions): EnoughIce[] {
  const scene = new Scene(options);
  const { offers } = offersOf(trip);
  return enoughFor(scene, trip, offers);
}

function enoughFor(scene: Scene, trip: Trip, offers: readonly Offer[]): EnoughIce[] {
  const bare = { ...trip, ice: trip.ice.filter((ice) => !isReplaceable(ice)) };
  return enoughOf(trip, fillTrip(scene, bare, offers), offers);
}

/** What a search from nothing found, beside what the file has aboard at departure. */
function enoughOf(trip: Trip, fills: Fills, offers: readonly Offer[]): EnoughIce[] {
  return fills.map((fill, i) => {
    const cooler = trip.coolers[i]!.name;
    const aboard = trip.ice.filter((ice) => ice.cooler === i && ice.putIn_s === null);
    const written = aboard.filter(isReplaceable);
    const enough = fill.holds ? fill.ice.map((ice) => asPiece(ice, whereOf(ice, offers), trip)) : null;
    return {
      cooler,
      enough,
      words: fill.holds ? packedWords(fill) : null,
      written: written.map((ice) => asPiece(ice, FROM_FILE, trip)),
      says: enoughWords(fill, cooler, aboard, offers),
    };
  });
}

function enoughWords(
  fill: Fills[number],
  cooler: string,
  aboard: readonly TripIce[],
  offers: readonly Offer[],
): string {
  const has = `the file has ${iceWords(aboard)}`;
  const dry = aboard.some((ice) => !isReplaceable(ice)) ? " beside the dry ice" : "";
  if (!fill.holds)
    return `${cooler}: none of the ice tried (${offerWords(offers)}) that fits is enough${dry}; ${has}`;
  if (fill.ice.length === 0) return `${cooler} needs no ice of its own at departure${dry}; ${has}`;
  if (fill.lay === "usual" && iceWords(fill.ice) === iceWords(aboard))
    return `${cooler}: ${iceWords(fill.ice)} is enough; the file has just that`;
  if (aboard.length === 0)
    return `${cooler}: ${packedWords(fill)} would be enough; the file has no ice for it`;
  const instead = dry === "" ? ", instead of what you wrote" : "";
  return `Packing ${cooler} afresh${instead}: ${packedWords(fill)} would be enough${dry}; ${has}`;
}

const sumOf = (pieces: readonly IcePiece[], what: (piece: IcePiece) => number): number =>
  pieces.reduce((sum, piece) => sum + what(piece), 0);

/** Fewer pieces, or known to be cheaper. */
function isLess(one: readonly IcePiece[], other: readonly IcePiece[]): boolean {
  const fewer = sumOf(other, ({ pieces }) => pieces) - sumOf(one, ({ pieces }) => pieces);
  const priced = [...one, ...other].every(({ price }) => price !== null);
  const cheaper = priced ? sumOf(other, ({ price }) => price!) - sumOf(one, ({ price }) => price!) : 0;
  return fewer > 0 || cheaper > 1e-9;
}

/**
 * Finds the least ice, in pieces that can be had before departure, that keeps every perishable of each cooler within
 * the trip's limit until it is eaten, leaves solid ice until the last perishable or drink is (but not where it freezes
 * outside from then on), and fits, in the cooler and, for what is frozen at home, in the freezer. Pieces lie where they
 * need to be fewest. All in the middle case, or for coolers with perishables in the world of
 * the options; what holds at the trip's confidence is for `surePlan` to find.
 *
 * Ice that the file has aboard stays, and pieces are added only where it does not do; to plan from nothing, leave it
 * out of the file. Forms: one, or two mixed. Where nothing holds, the best that fits is planned, with changes that
 * were each run.
 */
export function planIce(trip: Trip, options: PlanOptions): IcePlan {
  return toldIce(trip, searchIce(trip, new Scene(options)));
}

/** Pieces found, before anything is said about them. */
export interface IceSearch {
  scene: Scene;
  offers: readonly Offer[];
  /** What is taken to be on offer where the file has no supply; null: it has. */
  assumed: string | null;
  added: Fills;
  addedIce: readonly TripIce[];
  /** More than the search found, for what members told: that less is enough in its own world says nothing any more. */
  isClimbed?: boolean;
}

/** The search of `planIce` alone: what it found is told by `toldIce`, which tries ways out and so takes as long again. */
export function searchIce(trip: Trip, scene: Scene): IceSearch {
  const { offers, assumed } = offersOf(trip);
  const added = fillTrip(scene, trip, offers);
  return { scene, offers, assumed, added, addedIce: added.flatMap((fill) => fill.ice) };
}

/** Forecast and explanation of pieces that were found. */
export function toldIce(trip: Trip, search: IceSearch): IcePlan {
  const { scene, offers, assumed, added, addedIce, isClimbed = false } = search;
  const enough =
    trip.ice.some(isReplaceable) && !isClimbed
      ? enoughFor(scene, trip, offers)
      : enoughOf(trip, added, offers);
  const warnings: Warning[] = [
    ...shortWarnings(scene, trip, added, enough, offers),
    ...(isClimbed ? [] : lessWarnings(trip, addedIce, enough, offers)),
    ...layWarnings(added, isClimbed),
    ...(isClimbed ? [] : freezerWarnings(scene, trip, added, offers)),
    ...lateWarnings(trip),
    ...supplyWarnings(trip, assumed),
  ];
  scene.says("the planned trip");
  const planned = { ...trip, ice: [...trip.ice, ...addedIce] };
  const { signal, effects } = scene.options;
  const whole = forecast(planned, {
    ...(effects === undefined ? {} : { effects }),
    ...(signal === undefined ? {} : { signal }),
  });
  const plan = planResult(planned, addedIce, offers);
  const result: Result = {
    ...whole.result,
    command: "plan",
    warnings: [...warnings, ...whole.result.warnings],
    plan,
  };
  const late = new Set(cameTooLate(trip).map(({ name }) => name));
  const isLost = result.food.some(({ name, overLimit_h }) => late.has(name) && overLimit_h.p50 !== null);
  const holds =
    !isLost && added.every((fill) => fill.need.none || judge(result, fill.need).outcome === "holds");
  return { forecast: { ...whole, result }, addedIce, enough, holds };
}

/** Another packing that takes less than what is written and added: information, not a second plan. */
function lessWarnings(
  trip: Trip,
  addedIce: readonly TripIce[],
  enough: readonly EnoughIce[],
  offers: readonly Offer[],
): Warning[] {
  return enough.flatMap((one, i) => {
    const added = addedIce.filter((ice) => ice.cooler === i);
    const planned = [...one.written, ...added.map((ice) => asPiece(ice, whereOf(ice, offers), trip))];
    if (one.enough === null || one.written.length === 0 || !isLess(one.enough, planned)) return [];
    return [{ code: "ice-enough", says: one.says, path: `coolers[${i}]` }];
  });
}

function whereOf(ice: TripIce, offers: readonly Offer[]): string {
  return offers.find((offer) => offer.form === ice.form && offer.each === ice.each)?.where ?? FROM_FILE;
}

/** Where ice lies that does more elsewhere than at its usual place. */
function layWarnings(fills: Fills, isClimbed: boolean): Warning[] {
  return fills.flatMap(({ ice, lay, usual, holds, need }, i) => {
    const where = layWords(ice, lay);
    if (where === null || !holds) return [];
    const else_ = usual === null ? "no amount that fits is enough" : `it takes ${iceWords(usual)}`;
    const instead = isClimbed ? "" : ` At the usual place ${else_}.`;
    const says = `${need.cooler}: the plan has ${where}.${instead}`;
    return [{ code: "ice-layer", says, path: `coolers[${i}]` }];
  });
}

/** The freezer at home is told only where more room in it would have made another plan. */
function freezerWarnings(scene: Scene, trip: Trip, fills: Fills, offers: readonly Offer[]): Warning[] {
  const planned = fills.flatMap(({ ice }) => ice);
  if (trip.freezer === null || !isFreezerFull(trip, planned, offers)) return [];
  const free = fillTrip(scene, { ...trip, freezer: null }, offers);
  const differs = free.flatMap((fill, i) =>
    iceWords(fill.ice) === iceWords(fills[i]!.ice) ? [] : [`${fill.need.cooler} ${packedWords(fill)}`],
  );
  if (differs.length === 0) return [];
  const [litres, quarts] = (["metric", "us"] as const).map((units) =>
    volumeWords(trip.freezer!.space_m3, units),
  );
  const full = `the freezer (${litres}, ${quarts}; ${Math.round(100 * FREEZER_FRAC)} % of it for pieces, the rest for air: common practice) has no room for more ice from home`;
  return [
    {
      code: "freezer-full",
      says: `${full}; with more room it would be: ${differs.join("; ")}`,
      path: "freezer.space",
    },
  ];
}

/** Food that no ice of the departure can reach. */
function lateWarnings(trip: Trip): Warning[] {
  return cameTooLate(trip).map((food) => {
    const cooler = stopsOf(trip, food).at(-1)!.cooler;
    const { name } = trip.coolers[cooler]!;
    const hour = Math.floor(emptied_s(trip, cooler) / 3600);
    const says = `${food.name} comes into ${name} after it was emptied at hour ${hour}: ice of the departure is not there any more, and none is planned for it`;
    return { code: "food-after-merge", says, path: food.path };
  });
}

function supplyWarnings(trip: Trip, assumed: string | null): Warning[] {
  const says = `${assumed}: blocks and bags of cubes from a shop are assumed, without a price.`;
  const dry = trip.supply.some((supply) => supply.form === "dry ice" && supply.when_s === null);
  return [
    ...(assumed !== null ? [{ code: "supply-assumed", says, path: "supply" }] : []),
    ...(dry
      ? [{ code: "dry-ice-supply", says: `Dry ice is not planned. ${dryIceCaution.says}`, path: "supply" }]
      : []),
  ];
}

const nothingElse: Omit<PlanResult, "ice" | "assign" | "states" | "cost" | "weight_kg"> = {
  file: null,
  book: null,
  calendar: null,
  otherwise: [],
  layers: [],
  prep: [],
  iceRuns: [],
  merges: [],
  pull: [],
  drinks: [],
  lifts: [],
  warmLoad: null,
  amounts: [],
  allergens: [],
  waysOut: [],
  budget: { ice: null, food: null, unpriced: [] },
};

function planResult(trip: Trip, added: readonly TripIce[], offers: readonly Offer[]): PlanResult {
  const aboard = trip.ice.filter((ice) => ice.putIn_s === null);
  const ice = aboard.map((lot) => asPiece(lot, added.includes(lot) ? whereOf(lot, offers) : FROM_FILE, trip));
  const why = "as written";
  return {
    ice,
    assign: trip.food.map((food) => ({
      item: food.name,
      cooler: food.cooler === null ? "dry box" : trip.coolers[food.cooler]!.name,
      why,
      pinned: true,
    })),
    states: trip.food.map((food) => ({ item: food.name, state: food.state, why, pinned: true })),
    ...nothingElse,
    cost: ice.some(({ price }) => price === null) ? null : ice.reduce((sum, { price }) => sum + price!, 0),
    weight_kg: ice.reduce((sum, { weight_kg }) => sum + weight_kg, 0),
  };
}
