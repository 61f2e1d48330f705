import { medianClosures } from "../cooler/closures.ts";
import { buildWalls } from "../cooler/walls.ts";
import type { PrepAct } from "../forecast/planResult.ts";
import type { Band } from "../forecast/result.ts";
import { coolingTime_s } from "../heat/coolingTime.ts";
import { iceLatent_J_per_kg } from "../matter/ice.ts";
import type { Spread } from "../matter/spread.ts";
import type { Trip, TripCooler, TripFood } from "../trip/types.ts";
import { actId, type PrepClock } from "./prepClock.ts";
import { firstEaten_s, fridge_C, staysFrozen, thawTime } from "./thaw.ts";

/** Packing: so long for everything, and for each cooler. Common practice. */
const PACK_H = 1 / 3;
const PACK_EACH_H = 0.25;
const WEIGH_H = 0.5;
const LOAD_H = 0.25;
/** A refrigerator's air at cans and cartons that stand close, in W/m²K. Engineering judgement. */
const fridgeFilm_W_per_m2K: Spread = { p10: 4, p50: 7, p90: 10 };
/** From the shop or the shelf. */
const SHELF_C = 22;
/** Nothing gets quite as cold as the air around it. */
const COLD_C = fridge_C + 1.5;
/** A pre-chill that nobody wrote down: overnight, down to this. */
const PRECHILL_H = 12;
const CHILLED_C = 4;
/** Bodies warmer than this are worth pre-chilling. */
const WARM_C = 10;
const hour_s = 3600;

/** How long packing, weighing and loading take. */
export function packing_h(trip: Trip): number {
  return PACK_H + PACK_EACH_H * trip.coolers.length + WEIGH_H + LOAD_H;
}

/** Time for a drink to get cold in a refrigerator. */
function chillTime(food: TripFood, to_C: number): Band {
  const piece = { food: food.like, thick_m: food.thick_m, shape: food.shape };
  const at = (film_W_per_m2K: number): number | null => {
    const time_s = coolingTime_s(piece, SHELF_C, { t_C: fridge_C, film_W_per_m2K }, to_C);
    return time_s === null ? null : time_s / hour_s;
  };
  return {
    p10: at(fridgeFilm_W_per_m2K.p90),
    p50: at(fridgeFilm_W_per_m2K.p50),
    p90: at(fridgeFilm_W_per_m2K.p10),
  };
}

/** Every drink that goes in cold. */
export function chillActs(trip: Trip, clock: PrepClock): PrepAct[] {
  const drinks = trip.food.filter(
    ({ like, state, putIn_s, cooler }) =>
      like.kind === "drink" && state === "chilled" && putIn_s === null && cooler !== null,
  );
  return drinks.map((food) => {
    const lasts_h = chillTime(food, Math.max(food.start_C, COLD_C));
    return {
      at: clock.iso(clock.beforePacking_ms(lasts_h.p90 ?? 24)),
      does: `Put ${food.name} (${food.amount}) into the refrigerator, with air between`,
      why: "what goes in warm is cooled by the ice of the trip",
      id: actId("chill", food.name),
      lasts_h,
    };
  });
}

/** How long before departure a frozen item must begin to thaw; null: it can do so on the way. */
export function thawBefore_h(food: TripFood): number | null {
  if (food.state !== "frozen" || food.putIn_s !== null || food.eat_s === null || staysFrozen(food))
    return null;
  const slow_h = thawTime(food, food.start_C, fridge_C).p90;
  const before_h = (slow_h ?? 0) - firstEaten_s(food) / hour_s;
  return before_h > 0 ? before_h : null;
}

/** Frozen food whose meal comes before it could thaw on the way. */
export function thawActs(trip: Trip, clock: PrepClock): PrepAct[] {
  return trip.food.flatMap((food): PrepAct[] => {
    const before_h = thawBefore_h(food);
    if (before_h === null) return [];
    return [
      {
        at: clock.iso(clock.awake_ms(clock.depart_ms - before_h * 3_600_000)),
        does: `Move ${food.name} from the freezer to the refrigerator, in a tray`,
        why: "its first meal comes before it could thaw in the cooler; it counts as chilled from then on",
        id: actId("thaw", food.name),
        lasts_h: thawTime(food, food.start_C, fridge_C),
      },
    ];
  });
}

/** Ice whose melting takes the body of a cooler down to cold; what comes in through the walls meanwhile is beside it. */
function sacrificialIce_kg(cooler: TripCooler, from_C: number, for_h: number): number {
  const { effective_J_per_K, conductance_W_per_K } = buildWalls(cooler.body, medianClosures);
  const body_J = effective_J_per_K * Math.max(0, from_C - CHILLED_C);
  const walls_J = conductance_W_per_K * Math.max(0, from_C) * for_h * hour_s;
  return (body_J + walls_J) / iceLatent_J_per_kg;
}

interface Prechill {
  cooler: TripCooler;
  ice_kg: number;
  for_h: number;
  says: string;
}

/** As the file has it; a warm body that the file says nothing of gets a proposal. */
function prechillOf(cooler: TripCooler): Prechill | null {
  const { start } = cooler;
  if (start.kind === "prechill") {
    const for_h = start.for_s / hour_s;
    return { cooler, ice_kg: start.ice_kg, for_h, says: "as your file has it" };
  }
  if (start.body_C <= WARM_C) return null;
  const exact_kg = sacrificialIce_kg(cooler, start.body_C, PRECHILL_H);
  const ice_kg = Math.max(0.5, Math.ceil(2 * exact_kg) / 2);
  return { cooler, ice_kg, for_h: PRECHILL_H, says: "a proposal: your file has it warm" };
}

/** "2.5 kg (5.5 lb)". */
function amount(mass_kg: number): string {
  return `${Number(mass_kg.toFixed(1))} kg (${(mass_kg / 0.45359237).toFixed(1)} lb)`;
}

/** Coolers indoors, and cold, before packing. */
export function coolerActs(trip: Trip, clock: PrepClock): PrepAct[] {
  // What stays empty needs no cold walls.
  const used = trip.coolers.filter((_, i) => [...trip.food, ...trip.ice].some(({ cooler }) => cooler === i));
  const prechills = used.flatMap((cooler) => prechillOf(cooler) ?? []);
  const starts = prechills.map(({ for_h }) => clock.beforePacking_ms(for_h));
  const before = clock.onDay_ms(clock.pack_ms, -1, 9);
  const indoors_ms = Math.min(before, ...starts.map((at_ms) => clock.awake_ms(at_ms - 2 * 3_600_000)));
  const indoors: PrepAct = {
    at: clock.iso(indoors_ms),
    does: "Bring the coolers indoors, wash them, leave the lids open; try lids, latches and drain plugs",
    why: "a body from a hot garage costs ice",
    id: actId("indoors"),
    lasts_h: null,
  };
  const acts = prechills.map(({ cooler, ice_kg, for_h, says }, i): PrepAct => {
    const why = `cools the walls before the ice of the trip has to; ${says}`;
    const does = `Put ${amount(ice_kg)} of spare ice and a little water into ${cooler.name}, and shut it; pour it out before packing`;
    const lasts_h = { p10: for_h, p50: for_h, p90: for_h };
    return { at: clock.iso(starts[i]!), does, why, id: actId("prechill", cooler.name), lasts_h };
  });
  return trip.coolers.length === 0 ? [] : [indoors, ...acts];
}

/** Labels the evening before, then packing, weighing and loading, one after another. */
export function loadActs(trip: Trip, clock: PrepClock): PrepAct[] {
  if (trip.coolers.length === 0) return [];
  const act = (at_ms: number, id: string, does: string, why: string): PrepAct => ({
    at: clock.iso(at_ms),
    does,
    why,
    id: actId(id),
    lasts_h: null,
  });
  const before = (before_h: number): number => clock.depart_ms - before_h * 3_600_000;
  const order = packOrder(trip)
    .map(({ name }) => name)
    .join(", ");
  return [
    act(
      clock.onDay_ms(clock.pack_ms, -1, 18),
      "label",
      "Label every cooler on lid and side, and every bag: what, for which meal, raw or ready to eat",
      "nobody searches with the lid open",
    ),
    act(
      clock.pack_ms,
      "pack",
      `Pack straight from freezer and refrigerator, by the pack map, one cooler at a time: ${order}; shut each and keep it shut`,
      "what stands about warms up; packing has to be just before leaving",
    ),
    act(
      before(WEIGH_H + LOAD_H),
      "weigh",
      "Weigh each cooler, on a bathroom scale with and without it; write the weight on its label",
      "so that nobody lifts more than they meant to",
    ),
    act(
      before(LOAD_H),
      "load",
      "Load the coolers last, out of the sun, where they can be reached without unloading",
      "a parked vehicle is hot",
    ),
  ];
}

/** The one that is opened last is packed first. */
function packOrder(trip: Trip): TripCooler[] {
  return [...trip.coolers].sort(
    (a, b) =>
      (b.sealedUntil_s ?? 0) - (a.sealedUntil_s ?? 0) ||
      (a.openings?.perDay ?? 0) - (b.openings?.perDay ?? 0),
  );
}
