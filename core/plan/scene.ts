import { forecast } from "../forecast/forecast.ts";
import type { Result } from "../forecast/result.ts";
import type { Trip, TripIce } from "../trip/types.ts";
import { type Fill, fillCooler } from "./fillCooler.ts";
import type { Aim } from "./leastPieces.ts";
import { type Judgement, judge, type Need, needOf } from "./need.ts";
import { asIce, type Offer, suits } from "./offer.ts";
import { linkedCoolers, onlyCoolers } from "./oneCooler.ts";

/** How the search is run. */
export interface PlanOptions {
  aim: Aim;
  /** Told after every trial; `done_frac` is a guess, since nobody knows how many trials it takes. */
  onProgress?: (done_frac: number, says: string) => void;
  signal?: { readonly aborted: boolean };
}

/** Runs trials for one plan and counts them. */
export class Scene {
  readonly options: PlanOptions;
  #trials = 0;
  #says = "";

  constructor(options: PlanOptions) {
    this.options = options;
  }

  /** The middle case of a trip, without the effects of what was assumed. */
  run(trip: Trip): Result {
    this.#trials++;
    this.options.onProgress?.(1 - 40 / (40 + this.#trials), this.#says);
    const { signal } = this.options;
    return forecast(trip, { effects: false, ...(signal === undefined ? {} : { signal }) }).result;
  }

  says(words: string): void {
    this.#says = words;
  }
}

/** Coolers whose ice and food are in this one once every merge is done, itself included. */
function mergedInto(trip: Trip, cooler: number): ReadonlySet<number> {
  const from = new Set([cooler]);
  for (let before = 0; before < from.size; ) {
    before = from.size;
    for (const event of trip.events) if (event.do === "merge" && from.has(event.into)) from.add(event.from);
  }
  return from;
}

/** Order of planning: a cooler after those that are merged into it; drinks last, so that they get what is left over. */
function planningOrder(trip: Trip): number[] {
  const rank = trip.coolers.map(
    (cooler, i) => mergedInto(trip, i).size * 2 + (cooler.holds === "drinks" ? 1 : 0),
  );
  return trip.coolers.map((_, i) => i).sort((a, b) => rank[a]! - rank[b]! || a - b);
}

/** One cooler with what it takes to judge a trial of it. */
export interface Stage {
  trip: Trip;
  need: Need;
  /** This cooler's place in `trip`. */
  cooler: number;
}

/** The part of a trip that one cooler's ice can change: the cooler alone, or all that merges join to it. */
export function stageFor(trip: Trip, cooler: number): Stage {
  const linked = linkedCoolers(trip, cooler);
  const place = [...linked].sort((a, b) => a - b).indexOf(cooler);
  return {
    trip: onlyCoolers(trip, linked),
    need: needOf(trip, cooler, linked, mergedInto(trip, cooler)),
    cooler: place,
  };
}

export function judgeStage(scene: Scene, { trip, need }: Stage, more: readonly TripIce[]): Judgement {
  return judge(scene.run({ ...trip, ice: [...trip.ice, ...more] }), need);
}

/** What the search settles on: pieces for every cooler, by its place in the trip. */
export type Fills = (Fill & { need: Need })[];

/**
 * Fills every cooler of a trip on top of the ice that it has: each by itself first, coolers that merges couple one after
 * another, then the whole trip is asked. Steps of the reckoning fall a little differently there (within its tolerance),
 * so a cooler at the edge may need a piece more; and any piece that can be left out is.
 */
export function fillTrip(scene: Scene, trip: Trip, offers: readonly Offer[]): Fills {
  const fills: Fills = [];
  const order = planningOrder(trip);
  for (const cooler of order) {
    const filled = { ...trip, ice: [...trip.ice, ...fills.flatMap((fill) => fill?.ice ?? [])] };
    fills[cooler] = fillOne(scene, stageFor(filled, cooler), cooler, offers, fills);
  }
  const whole = scene.run(withFills(trip, fills));
  for (const cooler of order) {
    const { holds, need } = fills[cooler]!;
    if (!holds || judge(whole, need).outcome === "holds") continue;
    const others = fills.filter((_, i) => i !== cooler);
    const stage = { trip: withFills(trip, others), need, cooler };
    fills[cooler] = fillOne(scene, stage, cooler, offers, others);
  }
  leaveOut(scene, trip, offers, fills);
  return fills;
}

function withFills(trip: Trip, fills: Fills): Trip {
  return { ...trip, ice: [...trip.ice, ...fills.flatMap(({ ice }) => ice)] };
}

/** Fills one cooler from what the others leave; `cooler` is its place in the whole trip. */
function fillOne(
  scene: Scene,
  stage: Stage,
  cooler: number,
  offers: readonly Offer[],
  others: Fills,
): Fills[number] {
  const { need } = stage;
  scene.says(`ice for ${need.cooler}`);
  if (need.none) return { ice: [], holds: true, judgement: judgeStage(scene, stage, []), need };
  const used = others.flatMap((other) => other?.ice ?? []);
  const usable = offers.map((offer) => {
    if (!suits(offer, stage.trip, stage.cooler)) return { ...offer, max: 0 };
    return { ...offer, max: offer.max === null ? null : offer.max - taken(offer, used) };
  });
  const placed = (ice: readonly TripIce[], at: number): TripIce[] =>
    ice.map((lot) => ({ ...lot, cooler: at }));
  const fill = fillCooler(cooler, usable, scene.options.aim, (ice) =>
    judgeStage(scene, stage, placed(ice, stage.cooler)),
  );
  return { ...fill, need };
}

function taken(offer: Offer, ice: readonly TripIce[]): number {
  const same = ice.filter((lot) => isOf(lot, offer));
  return same.reduce((sum, lot) => sum + lot.pieces, 0);
}

function isOf(lot: TripIce, offer: Offer): boolean {
  const alike = lot.form === offer.form && lot.each === offer.each && lot.price === offer.price;
  return alike && lot.start_C === offer.at_C;
}

/** Leaves out single pieces for as long as every cooler that holds still does. */
function leaveOut(scene: Scene, trip: Trip, offers: readonly Offer[], fills: Fills): void {
  const holding = fills.filter((fill) => fill.holds && !fill.need.none);
  const holds = (trial: Fills): boolean => {
    const result = scene.run(withFills(trip, trial));
    return holding.every(({ need }) => judge(result, need).outcome === "holds");
  };
  const leaveOne = (): boolean =>
    fills.some((fill, i) =>
      fill.ice.some((lot) => {
        const trial = [...fills];
        trial[i] = { ...fill, ice: withoutOne(fill.ice, lot, offers) };
        if (!fill.holds || !holds(trial)) return false;
        fills[i] = trial[i]!;
        return true;
      }),
    );
  while (leaveOne());
}

function withoutOne(ice: readonly TripIce[], lot: TripIce, offers: readonly Offer[]): TripIce[] {
  return ice.flatMap((one) => {
    if (one !== lot) return [one];
    const i = offers.findIndex((offer) => isOf(lot, offer));
    return lot.pieces > 1 ? [asIce(offers[i]!, lot.pieces - 1, lot.cooler, lot.cooler * 10 + i)] : [];
  });
}
