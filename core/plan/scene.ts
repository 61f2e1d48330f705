import { forecast } from "../forecast/forecast.ts";
import type { Result } from "../forecast/result.ts";
import { looseStep_rel } from "../forecast/run.ts";
import type { World } from "../forecast/world.ts";
import { linkedCoolers, onlyCoolers } from "../trip/oneCooler.ts";
import type { Trip, TripIce } from "../trip/types.ts";
import { type Fill, fillCooler, type Tried } from "./fillCooler.ts";
import { freezerLeft_m3, frozenAtHome_m3 } from "./freezer.ts";
import type { Aim } from "./leastPieces.ts";
import { type Judgement, judge, type Need, needOf } from "./need.ts";
import { isOf, lessOne, type Offer, suits } from "./offer.ts";

/** How the search is run. */
export interface PlanOptions {
  aim: Aim;
  /** Told after every trial; `done_frac` is a guess, since nobody knows how many trials it takes. */
  onProgress?: (done_frac: number, says: string) => void;
  signal?: { readonly aborted: boolean };
  /** Whether the forecast of the plan tells how far each assumption moves the ice; left out: it does. */
  effects?: boolean;
  /**
   * Search for what holds in this world of a trial instead of the middle case. A trial may be a part of a trip; its lots are
   * those of the whole, since alike ones are told apart by their number.
   */
  worldOf?: (trial: Trip, whole: Trip) => World;
}

/** A cooler with perishables is planned for the world of the search; one with drinks alone for the middle case. */
const isWatched = (need: Need): boolean => need.foods.size > 0;

/** Runs trials for one plan and counts them. */
export class Scene {
  readonly options: PlanOptions;
  /** What was found for coolers whose search does not depend on the world, by all that it does depend on. */
  readonly settled: Map<string, Fill>;
  #trials = 0;
  #says = "";

  constructor(options: PlanOptions, settled: Map<string, Fill> = new Map()) {
    this.options = options;
    this.settled = settled;
  }

  /** The same search in another world. */
  inWorld(worldOf: NonNullable<PlanOptions["worldOf"]>): Scene {
    return new Scene({ ...this.options, worldOf }, this.settled);
  }

  /**
   * The middle case of a trip or the world of the search, without the effects of what was assumed. What only steers the
   * search is stepped loosely, and so is the world of a member, as all members are.
   */
  run(trip: Trip, need: Need, { steers, whole = trip }: { steers: boolean; whole?: Trip }): Result {
    this.#trials++;
    this.options.onProgress?.(1 - 40 / (40 + this.#trials), this.#says);
    const { signal } = this.options;
    const world = isWatched(need) ? this.options.worldOf?.(trip, whole) : undefined;
    return forecast(trip, {
      effects: false,
      ...(steers || world !== undefined ? { tolerance: looseStep_rel } : {}),
      ...(signal === undefined ? {} : { signal }),
      ...(world === undefined ? {} : { world }),
    }).result;
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
  /** Room for planned pieces in the freezer at home, all coolers together. */
  freezerLeft_m3: number;
  /** Trials are stepped loosely: they steer a search whose answer is asked again. */
  steers: boolean;
  /** The trip that `trip` is a part of, where all else in it is known, and this cooler's place there. */
  within?: { trip: Trip; cooler: number };
}

/** The part of a trip that one cooler's ice can change: the cooler alone, or all that merges join to it. */
export function stageFor(trip: Trip, cooler: number): Stage {
  const linked = linkedCoolers(trip, cooler);
  const place = [...linked].sort((a, b) => a - b).indexOf(cooler);
  return {
    trip: onlyCoolers(trip, linked),
    need: needOf(trip, cooler, linked),
    cooler: place,
    freezerLeft_m3: freezerLeft_m3(trip),
    steers: true,
  };
}

function judgeStage(scene: Scene, stage: Stage, more: readonly TripIce[]): Judgement {
  const { need, steers, within } = stage;
  const whole =
    within === undefined
      ? {}
      : {
          whole: withMore(
            within.trip,
            more.map((lot) => ({ ...lot, cooler: within.cooler })),
          ),
        };
  return judge(scene.run(withMore(stage.trip, more), need, { steers, ...whole }), need);
}

const withMore = (trip: Trip, more: readonly TripIce[]): Trip => ({ ...trip, ice: [...trip.ice, ...more] });

/** Runs a whole trip once for each kind of cooler in it, and judges each cooler by its own. */
function judgeWhole(scene: Scene, trip: Trip): (need: Need) => Judgement {
  const results = new Map<boolean, Result>();
  return (need) => {
    const kind = isWatched(need) || scene.options.worldOf === undefined;
    const result = results.get(kind) ?? scene.run(trip, need, { steers: false });
    results.set(kind, result);
    return judge(result, need);
  };
}

/** What the search settles on: pieces for every cooler, by its place in the trip. */
export type Fills = (Fill & { need: Need })[];

/**
 * Fills every cooler of a trip on top of the ice that it has: each by itself first, coolers that merges couple one after
 * another, then the whole trip is asked, stepped finely. A cooler at the edge may need a piece more then; and any piece
 * that can be left out is.
 */
export function fillTrip(scene: Scene, trip: Trip, offers: readonly Offer[]): Fills {
  const fills: Fills = [];
  const order = planningOrder(trip);
  for (const cooler of order) {
    const filled = { ...trip, ice: [...trip.ice, ...fills.flatMap((fill) => fill?.ice ?? [])] };
    fills[cooler] = fillOne(scene, stageFor(filled, cooler), cooler, offers, fills);
  }
  const judged = judgeWhole(scene, withFills(trip, fills));
  for (const cooler of order) {
    const { holds, need } = fills[cooler]!;
    if (!holds || judged(need).outcome === "holds") continue;
    const others = fills.filter((_, i) => i !== cooler);
    const whole = withFills(trip, others);
    const stage = { ...stageFor(whole, cooler), steers: false, within: { trip: whole, cooler } };
    fills[cooler] = fillOne(scene, stage, cooler, offers, others);
  }
  leaveOut(scene, trip, fills);
  return fills;
}

function withFills(trip: Trip, fills: Fills): Trip {
  return withMore(
    trip,
    fills.flatMap(({ ice }) => ice),
  );
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
  if (need.none) {
    const judgement = judgeStage(scene, stage, []);
    return { ice: [], lay: "usual", usual: [], holds: true, judgement, need };
  }
  const used = others.flatMap((other) => other?.ice ?? []);
  const usable = usableFrom(offers, stage, used);
  const key = isWatched(need) ? null : settledKey(cooler, stage, usable, used);
  const known = key === null ? undefined : scene.settled.get(key);
  const fill = known ?? fillCooler(cooler, usable, scene.options.aim, triedIn(scene, stage, offers, used));
  if (key !== null) scene.settled.set(key, fill);
  return { ...fill, need };
}

/** All that differs between two searches for one cooler of the same trip in the middle case. */
function settledKey(
  cooler: number,
  { trip, freezerLeft_m3, steers }: Stage,
  usable: readonly Offer[],
  used: readonly TripIce[],
): string {
  const lots = [...trip.ice, ...used].map(({ path, form, each, pieces, cooler: at, layer }) =>
    [path, form, each, pieces, at, layer].join(),
  );
  return JSON.stringify([
    cooler,
    trip.coolers.map(({ name }) => name),
    usable.map(({ max }) => max),
    freezerLeft_m3,
    steers,
    lots,
  ]);
}

/** Offers as far as one cooler may take of them; `used` is what the others have. */
export function usableFrom(offers: readonly Offer[], stage: Stage, used: readonly TripIce[]): Offer[] {
  return offers.map((offer) => {
    if (!suits(offer, stage.trip, stage.cooler)) return { ...offer, max: 0 };
    return { ...offer, max: offer.max === null ? null : Math.max(0, offer.max - taken(offer, used)) };
  });
}

/** Trials of one cooler's ice; what the freezer at home has no room for is more than fits, and is not run. */
export function triedIn(
  scene: Scene,
  stage: Stage,
  offers: readonly Offer[],
  used: readonly TripIce[],
): Tried {
  const left_m3 = stage.freezerLeft_m3 - frozenAtHome_m3(used, offers) + 1e-9;
  return (ice) => {
    const tooMuch = ice.length > 0 && frozenAtHome_m3(ice, offers) > left_m3;
    if (tooMuch) return notInFreezer;
    return judgeStage(
      scene,
      stage,
      ice.map((lot) => ({ ...lot, cooler: stage.cooler })),
    );
  };
}

const notInFreezer: Judgement = {
  outcome: "over",
  filled_frac: 0,
  food_h: 0,
  ice_h: 0,
  failing: [],
  freezes: new Set(),
};

function taken(offer: Offer, ice: readonly TripIce[]): number {
  const same = ice.filter((lot) => isOf(lot, offer));
  return same.reduce((sum, lot) => sum + lot.pieces, 0);
}

/** Leaves out single pieces for as long as every cooler that holds still does. */
function leaveOut(scene: Scene, trip: Trip, fills: Fills): void {
  const holding = fills.filter((fill) => fill.holds && !fill.need.none);
  const holds = (trial: Fills): boolean => {
    const judged = judgeWhole(scene, withFills(trip, trial));
    return holding.every(({ need }) => judged(need).outcome === "holds");
  };
  const leaveOne = (): boolean =>
    fills.some((fill, i) =>
      fill.ice.some((lot) => {
        const trial = [...fills];
        trial[i] = { ...fill, ice: fill.ice.flatMap((one) => (one === lot ? lessOne(lot) : [one])) };
        if (!fill.holds || !holds(trial)) return false;
        fills[i] = trial[i]!;
        return true;
      }),
    );
  while (leaveOne());
}
