import { forecast } from "../forecast/forecast.ts";
import type { PlanResult, Result, Warning } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { dryIceCaution } from "../safety/dryIce.ts";
import type { Trip, TripIce } from "../trip/types.ts";
import { judge } from "./need.ts";
import { asPiece, FROM_FILE, iceWords, isReplaceable, type Offer, offersOf } from "./offer.ts";
import { type Fills, fillTrip, type PlanOptions, Scene } from "./scene.ts";
import { type EnoughIce, shortWarnings } from "./shortage.ts";

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
  return fillTrip(scene, bare, offers).map((fill, i) => {
    const written = trip.ice.filter((ice) => ice.cooler === i && isReplaceable(ice));
    const cooler = trip.coolers[i]!.name;
    const just = iceWords(fill.ice) === iceWords(written);
    const aboard = `the file has ${just ? "just that" : iceWords(written)}`;
    return {
      cooler,
      enough: fill.holds ? fill.ice.map((ice) => asPiece(ice, whereOf(ice, offers), trip)) : null,
      words: fill.holds ? iceWords(fill.ice) : null,
      written: written.map((ice) => asPiece(ice, FROM_FILE, trip)),
      says: fill.holds
        ? `${cooler}: ${iceWords(fill.ice)} would be enough in the middle case; ${aboard}`
        : `${cooler}: no amount of ice on offer that fits would be enough; ${aboard}`,
    };
  });
}

/**
 * Finds the least ice, in pieces that can be had before departure, that keeps every perishable of each cooler within
 * the trip's limit until it is eaten, leaves solid ice to the return (in a cooler of drinks alone, to the last drink),
 * and fits. All in the middle case: a doubt about the weather or the cooler is not in it.
 *
 * Ice that the file has aboard stays, and pieces are added only where it does not do; to plan from nothing, leave it
 * out of the file. Forms: one, or two mixed. Where nothing holds, the best that fits is planned, with changes that
 * were each run.
 */
export function planIce(trip: Trip, options: PlanOptions): IcePlan {
  const scene = new Scene(options);
  const { offers, assumed } = offersOf(trip);
  const added = fillTrip(scene, trip, offers);
  const addedIce = added.flatMap((fill) => fill.ice);
  const enough = trip.ice.some(isReplaceable)
    ? enoughFor(scene, trip, offers)
    : fromNothing(trip, added, offers);
  const warnings: Warning[] = [
    ...shortWarnings(scene, trip, added, enough, offers),
    ...enough.map(({ says }, i) => ({ code: "ice-enough", says, path: `coolers[${i}]` })),
    ...supplyWarnings(trip, assumed),
    ...unfilled,
  ];
  scene.says("the planned trip");
  const planned = { ...trip, ice: [...trip.ice, ...addedIce] };
  const { signal } = options;
  const whole = forecast(planned, signal === undefined ? {} : { signal });
  const plan = planResult(planned, addedIce, offers);
  const result: Result = {
    ...whole.result,
    command: "plan",
    warnings: [...warnings, ...whole.result.warnings],
    plan,
  };
  const holds = added.every((fill) => fill.need.none || judge(result, fill.need).outcome === "holds");
  return { forecast: { ...whole, result }, addedIce, enough, holds };
}

/** With no ice aboard, what was planned is what is enough: no second search. */
function fromNothing(trip: Trip, fills: Fills, offers: readonly Offer[]): EnoughIce[] {
  return fills.map((fill, i) => ({
    cooler: trip.coolers[i]!.name,
    enough: fill.holds ? fill.ice.map((ice) => asPiece(ice, whereOf(ice, offers), trip)) : null,
    words: fill.holds ? iceWords(fill.ice) : null,
    written: [],
    says: fill.holds
      ? `${trip.coolers[i]!.name}: ${iceWords(fill.ice)} is enough in the middle case`
      : `${trip.coolers[i]!.name}: no amount of ice on offer that fits is enough`,
  }));
}

function whereOf(ice: TripIce, offers: readonly Offer[]): string {
  return offers.find((offer) => offer.form === ice.form && offer.each === ice.each)?.where ?? FROM_FILE;
}

function supplyWarnings(trip: Trip, assumed: boolean): Warning[] {
  const says = "no ice and no supply is listed: shop bags of block and cube ice are assumed, without a price";
  const dry = trip.supply.some((supply) => supply.form === "dry ice" && supply.when_s === null);
  return [
    ...(assumed ? [{ code: "supply-assumed", says, path: "supply" }] : []),
    ...(dry
      ? [{ code: dryIceCaution.code, says: `Dry ice is not planned. ${dryIceCaution.says}`, path: "supply" }]
      : []),
  ];
}

const unfilled: readonly Warning[] = [
  {
    code: "plan-part",
    says: "this version plans the ice alone: assignment and states are as written; layers, preparation, ice runs, merges and thawing are not planned",
    path: "",
  },
];

function planResult(trip: Trip, added: readonly TripIce[], offers: readonly Offer[]): PlanResult {
  const aboard = trip.ice.filter((ice) => ice.putIn_s === null);
  const ice = aboard.map((lot) => asPiece(lot, added.includes(lot) ? whereOf(lot, offers) : FROM_FILE, trip));
  const why = "as written";
  return {
    file: null,
    ice,
    assign: trip.food.map((food) => ({
      item: food.name,
      cooler: food.cooler === null ? "dry box" : trip.coolers[food.cooler]!.name,
      why,
    })),
    states: trip.food.map((food) => ({ item: food.name, state: food.state, why })),
    layers: [],
    prep: [],
    iceRuns: [],
    merges: [],
    pull: [],
    cost: ice.some(({ price }) => price === null) ? null : ice.reduce((sum, { price }) => sum + price!, 0),
    weight_kg: ice.reduce((sum, { weight_kg }) => sum + weight_kg, 0),
  };
}
