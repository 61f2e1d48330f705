import { isFish } from "../safety/chartRows.ts";
import { frailCaution } from "../safety/vulnerable.ts";
import type { Trip, TripFood } from "../trip/types.ts";
import type { Warning } from "./result.ts";

function frailWarning(item: TripFood): Warning[] {
  const says = frailCaution(item.like, item.name);
  if (says === null) return [];
  return [
    {
      code: "vulnerable-eater",
      says: `${item.name}, for infants, pregnant, old or immune-compromised eaters: ${says} (general advice; ask who treats them)`,
      path: item.path,
    },
  ];
}

function packWarning(item: TripFood): Warning[] {
  if (!item.reducedOxygen || !isFish(item.like.key)) return [];
  const how =
    item.state === "frozen"
      ? "open or pierce its pack before it thaws"
      : "open its pack now, or keep it at or below 38 °F (3.3 °C) until it is";
  return [
    {
      code: "opened-pack",
      says: `${item.name} is packed without air: ${how}. Without air, and warmer than that, bacteria may make a poison that nobody smells (Food Code 2022, 3-501.13).`,
      path: item.path,
    },
  ];
}

/** Cautions that hold whatever the coolers do: for eaters who are easily harmed, and for fish in a pack without air. */
export function foodCautions(trip: Trip): Warning[] {
  return [
    ...trip.food.flatMap(packWarning),
    ...(trip.party.vulnerable ? trip.food.flatMap(frailWarning) : []),
  ];
}
