import type { Fleet } from "../cooler/fleetState.ts";
import { massWords } from "../quantity/show.ts";
import { dryIceCaution } from "../safety/dryIce.ts";
import { coolerLift } from "../safety/lifting.ts";
import type { Trip } from "../trip/types.ts";
import { staysOf } from "./load.ts";
import type { CoolerResult, Warning } from "./result.ts";

/** A warning is read in any units. */
const bothMasses = (mass_kg: number): string =>
  `${massWords(mass_kg, "metric")}, ${massWords(mass_kg, "us")}`;

/** Places where people breathe the same air as the cooler. */
const closedPlaces: ReadonlySet<string> = new Set(["cabin", "closed car", "tent", "indoors", "boat"]);

function dryIceWarnings(trip: Trip, cooler: number): Warning[] {
  const has = trip.ice.some((ice) => ice.form === "dry ice" && ice.cooler === cooler);
  if (!has) return [];
  const path = `coolers[${cooler}]`;
  const closed = staysOf(trip, cooler).filter(
    (stay) => closedPlaces.has(stay.place) && stay.to_s > stay.from_s,
  );
  const out: Warning[] = [{ code: dryIceCaution.code, says: dryIceCaution.says, path }];
  if (closed.length > 0)
    out.push({
      code: "dry-ice-closed-place",
      says: `${trip.coolers[cooler].name} carries dry ice in a closed place (${[...new Set(closed.map((s) => s.place))].join(", ")}): its gas can suffocate people. Do not travel so: ventilate, or carry it outside.`,
      path,
    });
  return out;
}

/**
 * What a person must know beside the numbers: what does not fit, what is heavy, dry ice where people breathe, food put
 * next to something colder than it bears.
 */
export function warningsFor(trip: Trip, fleet: Fleet, results: readonly CoolerResult[]): Warning[] {
  const out: Warning[] = [];
  results.forEach((result, i) => {
    const path = `coolers[${i}]`;
    if (result.filled_frac > 1.0001)
      out.push({
        code: "does-not-fit",
        says: `${result.name} would be ${Math.round(result.filled_frac * 100)} % full: the lid does not close`,
        path,
      });
    const lift = coolerLift(result.packedWeight_kg, trip.carry.people);
    if (lift.index > 1)
      out.push({
        code: "heavy",
        says: `${result.name} weighs ${bothMasses(result.packedWeight_kg)} packed, ${lift.index.toFixed(1)} times what the NIOSH lifting equation recommends for ${trip.carry.people === 1 ? "one person" : `${trip.carry.people} people`} (${bothMasses(lift.recommended_kg)}): split it, or load it in place`,
        path,
      });
    out.push(...dryIceWarnings(trip, i));
  });
  for (const item of trip.food) {
    if (!item.freezesBadly || item.cooler === null) continue;
    const index = fleet.lots.findIndex((lot) => lot.id === item.id);
    const freezes_C = item.like.freezes_C ?? 0;
    if (index >= 0 && fleet.lotTracks[index].cold_C.some((t) => t < freezes_C - 0.2))
      out.push({ code: "freezes", says: `${item.name} would freeze, and that ruins it`, path: item.path });
  }
  return out;
}
