import type { Closures } from "../cooler/closures.ts";
import type { Act, Around, BodyStart, CoolerBody, CoolerInput, FleetInput, Lot } from "../cooler/types.ts";
import { conductanceRange_W_per_K } from "../cooler/walls.ts";
import type { EnthalpyCurve } from "../matter/curve.ts";
import type { SkyClosures } from "../sky/closures.ts";
import { surroundingsAt } from "../sky/surroundings.ts";
import type { Stay, Weather } from "../sky/types.ts";
import { erringWeather } from "../sky/weatherError.ts";
import type { CoolerWorld, LotWorld, World } from "./world.ts";

/** What a box sees as it goes from stay to stay. */
export function aroundIn(
  weather: Weather,
  stays: readonly Stay[],
  breaks_s: readonly number[],
  sky?: Readonly<SkyClosures>,
): Around {
  let now = 0;
  return {
    stays,
    breaks_s,
    at: (t_s, out) => {
      while (now > 0 && t_s < stays[now]!.from_s) now--;
      while (now + 1 < stays.length && t_s >= stays[now]!.to_s) now++;
      return surroundingsAt(weather, stays[now]!, t_s, out, sky);
    },
  };
}

/** A conductance that was measured, as it really is; held just within what the body can have. */
function measuredIn(body: CoolerBody, world: CoolerWorld): number | null {
  if (body.measured_W_per_K === null) return null;
  const { least_W_per_K, most_W_per_K } = conductanceRange_W_per_K(
    { ...body, seal_W_per_mK: world.seal_W_per_mK, leak_per_h: world.leak_per_h },
    world.closures as Closures,
  );
  const wanted = body.measured_W_per_K * world.measured_frac;
  return Math.min(0.999 * most_W_per_K, Math.max(1.001 * least_W_per_K, wanted));
}

/** A body as it really is in a world. */
export function bodyIn(body: CoolerBody, world: CoolerWorld): CoolerBody {
  const { seal_W_per_mK, leak_per_h, absorptance_frac } = world;
  return {
    ...body,
    seal_W_per_mK,
    leak_per_h,
    absorptance_frac,
    measured_W_per_K: measuredIn(body, world),
  };
}

const startIn = (start: BodyStart, shift_K: number): BodyStart =>
  start.kind === "uniform"
    ? { ...start, body_C: start.body_C + shift_K }
    : { ...start, room_C: start.room_C + shift_K };

const scaled = (curve: EnthalpyCurve, frac: number): EnthalpyCurve =>
  frac === 1 ? curve : { ...curve, h_J_per_kg: curve.h_J_per_kg.map((h) => h * frac) };

function lotIn(lot: Lot, world: LotWorld | undefined): Lot {
  if (world === undefined) return lot;
  const mass_kg = lot.mass_kg * world.mass_frac;
  if (lot.kind === "food")
    return { ...lot, mass_kg, start_C: world.start_C, curve: scaled(lot.curve, world.heat_frac) };
  return { ...lot, mass_kg, start_C: world.start_C, liquid_frac: world.liquid_frac };
}

function actIn(act: Act, world: World): Act {
  if (act.do === "put in") return { ...act, lot: lotIn(act.lot, world.lots.get(act.lot.id)) };
  if (act.do === "open") return { ...act, for_s: act.for_s * world.coolers[act.cooler]!.openFor_frac };
  return act;
}

function coolerIn(cooler: CoolerInput, own: CoolerWorld, weather: Weather, world: World): CoolerInput {
  const { openings, around } = cooler;
  return {
    ...cooler,
    body: bodyIn(cooler.body, own),
    start: startIn(cooler.start, own.bodyShift_K),
    openings:
      openings === null
        ? null
        : {
            ...openings,
            perDay: openings.perDay * own.openings_frac,
            each_s: openings.each_s * own.openFor_frac,
          },
    around: aroundIn(weather, around.stays, around.breaks_s, world.sky),
    lots: cooler.lots.map((lot) => lotIn(lot, world.lots.get(lot.id))),
    closures: own.closures,
  };
}

/**
 * A fleet as it may really be: the input of the middle case (`loadTrip`) with a draw of everything that nobody knows.
 * What a person decides (who eats what when, where things stand) stays.
 */
export function inWorld(input: FleetInput, told: Weather, world: World): FleetInput {
  const weather = erringWeather(told, world.weather);
  return {
    end_s: input.end_s,
    acts: input.acts.map((act) => actIn(act, world)),
    coolers: input.coolers.map((cooler, i) => coolerIn(cooler, world.coolers[i]!, weather, world)),
  };
}
