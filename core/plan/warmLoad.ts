import { drawWorld } from "../ensemble/drawWorld.ts";
import { bandOf } from "../ensemble/quantiles.ts";
import { Cancelled } from "../ensemble/types.ts";
import { forecast as run } from "../forecast/forecast.ts";
import type { WarmLoadPlan } from "../forecast/planResult.ts";
import type { Band } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import type { World } from "../forecast/world.ts";
import { foodDensity_kg_per_m3 } from "../matter/foodProperties.ts";
import { massWords } from "../quantity/show.ts";
import { pieceRoom_m3 } from "../trip/ice.ts";
import { linkedCoolers, onlyCoolers } from "../trip/oneCooler.ts";
import type { Trip, TripFood, TripIce, TripWarmLoad } from "../trip/types.ts";
import { isoAt, momentWords } from "./moment.ts";
import { centreCold_h, layingWords, loadRoom_L, piecesOf } from "./warmCooling.ts";
import { eaten_s } from "./whereabouts.ts";

export interface WarmLoadOptions {
  seed: number;
  /** Runs that bands and reserve come from, 15 at most; 0: the middle case alone. */
  members?: number;
  signal?: { readonly aborted: boolean };
}

const MEMBERS = 15;
const LOAD_ID = "warm load";
/** A bag from a shop where the file names no loose ice: 10 lb. */
const SHOP_BAG = { each: "10 lb", each_kg: 10 * 0.45359237, at_C: -2, liquid_frac: 0.03 };
const MOST_PIECES = 60;
/** Shares of the trip up to the latest moment at which it might come as well. */
const EARLIER_FRAC = [0.25, 0.5, 0.75];
/** Meat that is not cold within a day is past using. Common practice, from memory; the charts' two hours are for kitchens. */
const COLD_WITHIN_h = 24;
const hour_s = 3600;

/**
 * What a big warm load that may come asks of its cooler: ice to keep in reserve from departure, room, time until its
 * middle is cold, and by when to be home. The load is put in at its latest moment; the reserve is the least number of
 * bags with which, at the trip's confidence, it comes under the limit within a day, stays there until the return, and no
 * other food is lost by it. It is laid in the ice at the base; on top of other food it would take days to cool. Where so much does not fit, it is what fits. null: the trip has none.
 *
 * Hours of the middle of a thick piece come from conduction by itself (`centreCold_h`); the ice and the rest of the food
 * from the reckoning of the whole cooler.
 */
export function warmLoadPlan(trip: Trip, forecast: Forecast, options: WarmLoadOptions): WarmLoadPlan | null {
  const load = trip.warmLoad;
  if (load === null || forecast.result.coolers[load.cooler] === undefined) return null;
  const bench = new Bench(trip, load, options);
  const room = roomLeft_m3(trip, load, forecast);
  const bag = bagOf(trip, load);
  const most = Math.max(0, Math.min(MOST_PIECES, Math.floor(room / pieceRoom_m3("cube", bag.each_kg))));
  const reserve = bench.leastReserve(most);
  const keepsFor_h = bench.keepsFor(load.latest_s, reserve.pieces);
  const isShort = keepsFor_h.p10 !== null;
  return {
    name: load.name,
    cooler: trip.coolers[load.cooler]!.name,
    amount_kg: load.mass_kg,
    at: isoAt(trip, load.latest_s),
    reserveIce_kg: reserve.pieces * bag.each_kg,
    reserve: { ...reserve, each: bag.each, form: "cube" },
    space_L: loadRoom_L(load),
    centreCold_h: bench.cold(reserve.pieces),
    keepsFor_h,
    goHomeBy: isShort ? isoAt(trip, load.latest_s + keepsFor_h.p10! * hour_s) : null,
    layout: layingWords(load, trip.rules?.carcass ?? null),
    says: saysOf(trip, load, { bag, ...reserve, room_m3: room, earlier: bench.earlier(reserve.pieces) }),
  };
}

interface Bag {
  each: string;
  each_kg: number;
  at_C: number;
  liquid_frac: number;
}

function bagOf(trip: Trip, load: TripWarmLoad): Bag {
  const loose = trip.supply.filter(({ form }) => form === "cube" || form === "crushed");
  const aboard = trip.ice.find(({ form, cooler }) => form === "cube" && cooler === load.cooler);
  const known = loose.find(({ when_s }) => when_s === null) ?? loose[0];
  if (known !== undefined) return known;
  if (aboard === undefined) return SHOP_BAG;
  const { each, mass_kg, pieces, start_C, liquid_frac } = aboard;
  return { each, each_kg: mass_kg / pieces, at_C: start_C, liquid_frac };
}

/** Room for the reserve: what the cooler has left when the load is in, counting out what is eaten up by then. */
function roomLeft_m3(trip: Trip, load: TripWarmLoad, { result }: Forecast): number {
  const { volume_L, filled_frac } = result.coolers[load.cooler]!;
  const eaten = trip.food
    .filter(({ cooler, putIn_s }) => cooler === load.cooler && putIn_s === null)
    .filter((food) => eaten_s(food, trip) <= load.latest_s);
  const eaten_m3 = eaten.reduce(
    (sum, { mass_kg, like }) => sum + mass_kg / foodDensity_kg_per_m3(like, 5),
    0,
  );
  const free_m3 = ((1 - filled_frac) * volume_L) / 1000;
  return Math.min(free_m3, free_m3 + eaten_m3 - loadRoom_L(load) / 1000);
}

/** What happens where it comes sooner than planned for. */
interface Earlier {
  at_s: number;
  over_s: number;
}

interface Outcome {
  /** It comes under the limit within a day and stays there; or it still cools at the return, with ice left. */
  keeps: boolean;
  /** Hours from departure at which it passes the limit; NaN: not before the return. */
  over_h: number;
  /** Hours from being put in until it is under the limit; NaN: not before the return. */
  cold_h: number;
  /** No food is lost that would not be lost without it. */
  sparesOthers: boolean;
}

/** Tries the load at moments and with reserves, each in a number of worlds. */
class Bench {
  readonly #trip: Trip;
  readonly #load: TripWarmLoad;
  readonly #options: WarmLoadOptions;
  readonly #members: number;
  readonly #without: ReadonlySet<string>[] = [];

  constructor(trip: Trip, load: TripWarmLoad, options: WarmLoadOptions) {
    this.#trip = trip;
    this.#load = load;
    this.#options = options;
    this.#members = Math.min(MEMBERS, options.members ?? MEMBERS);
  }

  /** The least reserve that holds, by halving; `holds` false: even the most that fits is too little. */
  leastReserve(most: number): { pieces: number; holds: boolean } {
    if (!this.#holds(most)) return { pieces: most, holds: false };
    let [low, high] = [-1, most];
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2);
      if (this.#holds(middle)) high = middle;
      else low = middle;
    }
    return { pieces: high, holds: true };
  }

  keepsFor(at_s: number, pieces: number): Band {
    const over_h = this.#worlds().map((draw) => this.#outcome(at_s, pieces, draw).over_h - at_s / hour_s);
    return bandOf(over_h);
  }

  /** Until its middle is cold: by conduction in touching ice, and no sooner at the slow end than in the whole cooler. */
  cold(pieces: number): Band {
    const alone = centreCold_h(this.#load, this.#trip.limit.limit_C);
    const { latest_s } = this.#load;
    const { p90 } = bandOf(this.#worlds().map((draw) => this.#outcome(latest_s, pieces, draw).cold_h));
    return { ...alone, p90: p90 === null || alone.p90 === null ? null : Math.max(alone.p90, p90) };
  }

  /** The first tried moment before the latest from which it would pass its limit before the return, with when that is. */
  earlier(pieces: number): Earlier | null {
    for (const share of EARLIER_FRAC) {
      const at_s = Math.round((this.#load.latest_s * share) / hour_s) * hour_s;
      const over_h = this.keepsFor(at_s, pieces).p10;
      if (over_h !== null) return { at_s, over_s: at_s + over_h * hour_s };
    }
    return null;
  }

  #worlds(): number[] {
    return Array.from({ length: Math.max(1, this.#members) }, (_, i) => i);
  }

  #holds(pieces: number): boolean {
    let failing = 0;
    const allowed = Math.floor((1 - this.#trip.confidence_frac) * Math.max(1, this.#members) + 1e-9);
    for (const draw of this.#worlds()) {
      const { keeps, sparesOthers } = this.#outcome(this.#load.latest_s, pieces, draw);
      if (!keeps || !sparesOthers) failing++;
      if (failing > allowed) return false;
    }
    return true;
  }

  #outcome(at_s: number, pieces: number, draw: number): Outcome {
    if (this.#options.signal?.aborted) throw new Cancelled();
    const trial = this.#with(at_s, pieces);
    const { result } = run(trial, { effects: false, ...this.#worldOf(trial, draw) });
    const load = result.food.find(({ name }) => name === LOAD_ID)!;
    const { series } = result.coolers.find(
      ({ name }) => name === this.#trip.coolers[this.#load.cooler]!.name,
    )!;
    const stillCools = load.belowLimit_h.p50 === null && (series.ice_kg.p50.at(-1) ?? 0) > 0;
    const over_h = stillCools ? null : load.overLimit_h.p50;
    const before = this.#lostWithout(draw);
    const lost = result.food.filter((food) => food.name !== LOAD_ID && isLost(food));
    const cold_h = (load.belowLimit_h.p50 ?? Number.NaN) - at_s / hour_s;
    return {
      keeps: over_h === null && !(this.#slow_h(cold_h, at_s) > COLD_WITHIN_h),
      over_h: over_h ?? Number.NaN,
      cold_h,
      sparesOthers: lost.every(({ name }) => before.has(name)),
    };
  }

  /** Where it is not cold by the return, it takes at least until then. */
  #slow_h(cold_h: number, at_s: number): number {
    return Number.isNaN(cold_h) ? (this.#trip.duration_s - at_s) / hour_s : cold_h;
  }

  #lostWithout(draw: number): ReadonlySet<string> {
    let lost = this.#without[draw];
    if (lost === undefined) {
      const trial = this.#only(this.#trip);
      const { result } = run(trial, { effects: false, ...this.#worldOf(trial, draw) });
      lost = new Set(result.food.filter(isLost).map(({ name }) => name));
      this.#without[draw] = lost;
    }
    return lost;
  }

  #worldOf(trial: Trip, draw: number): { world?: World } {
    return this.#members === 0 ? {} : { world: drawWorld(trial, draw, this.#options.seed) };
  }

  #only(trip: Trip): Trip {
    return onlyCoolers(trip, linkedCoolers(trip, this.#load.cooler));
  }

  #with(at_s: number, pieces: number): Trip {
    const food = [...this.#trip.food, loadFood(this.#load, this.#trip, at_s)];
    const reserve = pieces === 0 ? [] : [reserveIce(this.#load, bagOf(this.#trip, this.#load), pieces)];
    return this.#only({ ...this.#trip, food, ice: [...this.#trip.ice, ...reserve] });
  }
}

const isLost = ({ perishable, overLimit_h }: { perishable: boolean; overLimit_h: Band }): boolean =>
  perishable && overLimit_h.p50 !== null;

/** The load as one more food, bagged, laid in the ice at the base, that is to last until the return. */
function loadFood(load: TripWarmLoad, trip: Trip, at_s: number): TripFood {
  return {
    ...{ id: LOAD_ID, path: load.path, name: LOAD_ID, amount: load.amount, like: load.like },
    ...{ raw: true, state: "ambient", start_C: load.start_C, mass_kg: load.mass_kg, pieces: load.pieces },
    ...piecesOf(load),
    ...{ freezesBadly: false, watertight: true, eat_s: trip.duration_s, cooler: load.cooler, layer: "base" },
    ...{ warmBefore_s: 0, putIn_s: at_s, open: { place: false, state: false }, parts_s: null },
    ...{ portion: null, contains: null, price: null, reducedOxygen: false, refrozen: false, daysCold: null },
  };
}

function reserveIce(load: TripWarmLoad, bag: Bag, pieces: number): TripIce {
  return {
    ...{ id: "warm load reserve", path: load.path, form: "cube", mass_kg: pieces * bag.each_kg, pieces },
    ...{ each: bag.each, start_C: bag.at_C, liquid_frac: bag.liquid_frac, cooler: load.cooler },
    ...{ layer: "base", price: null, putIn_s: null, boughtBefore_s: 0 },
  };
}

interface Found {
  bag: Bag;
  pieces: number;
  holds: boolean;
  room_m3: number;
  earlier: Earlier | null;
}

function saysOf(trip: Trip, load: TripWarmLoad, found: Found): string {
  const { bag, pieces, holds, room_m3, earlier } = found;
  const cooler = trip.coolers[load.cooler]!.name;
  const kg = pieces * bag.each_kg;
  const bags = `${pieces} × ${bag.each} of loose ice (${massWords(kg, "us")}, ${massWords(kg, "metric")})`;
  const reserve = !holds
    ? `more than ${pieces === 0 ? "the ice that is planned" : bags} does not fit in ${cooler}, and with that it does not keep to the return at this confidence: go home earlier, or bring another cooler`
    : pieces === 0
      ? "the ice that is planned already is reserve enough"
      : `keep ${bags} more in ${cooler} from departure`;
  const parts = [
    `${load.amount} of ${load.name} at the latest ${momentWords(trip, load.latest_s)}: ${reserve}`,
  ];
  if (room_m3 < 0)
    parts.push(
      `it takes ${Math.round(loadRoom_L(load))} L and does not fit beside what is in ${cooler} then: empty another cooler for it`,
    );
  if (earlier !== null)
    parts.push(
      `if it comes ${momentWords(trip, earlier.at_s)} already, be home by ${momentWords(trip, earlier.over_s)} or fetch ice`,
    );
  parts.push("this is reckoned for ice that touches it; a thermometer in the thickest piece comes first");
  return `${parts.join(". ").replace(/\. ([a-z])/g, (_, letter: string) => `. ${letter.toUpperCase()}`)}.`;
}
