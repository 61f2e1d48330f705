import type { AllergenRow } from "../forecast/planResult.ts";
import type { Trip } from "../trip/types.ts";

/**
 * What each item contains, as far as the file says, and which allergies of the party it meets. An item of which nothing
 * is said counts as if it held all of them: read its label. An empty list clears nothing, it repeats what the file says,
 * and traces are not told.
 */
export function allergenRows(trip: Trip): AllergenRow[] {
  const { allergies } = trip.party;
  return trip.food.map(({ name, contains }) => ({
    item: name,
    contains: contains === null ? null : [...contains],
    meets: allergies.filter((allergen) => contains === null || contains.includes(allergen)),
  }));
}
