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

/** Places where people breathe the same air as the cooler; a trunk shares its air with the cabin. */
const closedPlaces: ReadonlySet<string> = new Set([
  "cabin",
  "closed car",
  "trunk",
  "tent",
  "indoors",
  "boat",
]);

/** Closed places that something stands in from a moment on, in this cooler and in those it is merged into. */
function closedWith(trip: Trip, cooler: number, from_s: number): Set<string> {
  const merge = trip.events.find(
    (event) => event.do === "merge" && event.from === cooler && event.t_s >= from_s,
  );
  const to_s = merge?.t_s ?? trip.duration_s;
  const stays = staysOf(trip, cooler).filter((stay) => stay.to_s > from_s && stay.from_s < to_s);
  const here = stays.map((stay) => stay.place).filter((place) => closedPlaces.has(place));
  const later = merge?.do === "merge" ? closedWith(trip, merge.into, merge.t_s) : [];
  return new Set([...here, ...later]);
}

function dryIceWarnings(trip: Trip): Warning[] {
  return trip.ice
    .filter((ice) => ice.form === "dry ice")
    .flatMap((ice) => {
      const closed = closedWith(trip, ice.cooler, ice.putIn_s ?? 0);
      const caution = { code: dryIceCaution.code, says: dryIceCaution.says, path: ice.path };
      if (closed.size === 0) return [caution];
      const says = `${trip.coolers[ice.cooler].name}: its dry ice would be in a closed place (${[...closed].join(", ")}), and its gas can suffocate people. Do not travel or sleep so: ventilate, or carry it outside.`;
      return [{ code: "dry-ice-closed-place", says, path: ice.path }, caution];
    });
}

/**
 * What a person must know beside the numbers: what does not fit, what is heavy, dry ice where people breathe, food put
 * next to something colder than it bears.
 */
export function warningsFor(trip: Trip, fleet: Fleet, results: readonly CoolerResult[]): Warning[] {
  const out: Warning[] = dryIceWarnings(trip);
  results.forEach((result, i) => {
    const path = `coolers[${i}]`;
    if (result.filled_frac > 1 + 1e-9)
      out.push({
        code: "does-not-fit",
        says: `${result.name} would be ${Math.ceil(result.filled_frac * 100)} % full: the lid does not close`,
        path,
      });
    const lift = coolerLift(result.packedWeight_kg, trip.carry.people);
    if (lift.index > 1)
      out.push({
        code: "heavy",
        says: `${result.name} weighs ${bothMasses(result.packedWeight_kg)} packed, ${lift.index.toFixed(1)} times what the NIOSH lifting equation recommends for ${trip.carry.people === 1 ? "one person" : `${trip.carry.people} people`} (${bothMasses(lift.recommended_kg)}): split it, or load it in place`,
        path,
      });
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
