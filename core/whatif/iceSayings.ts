import type { Trip, TripIce } from "../trip/types.ts";
import { type Unmade, withIce } from "./change.ts";
import { fits, iceFromHome, looseAndBlocks, withIceAt, withIceForm } from "./loadHabits.ts";
import { noEnd_ratio, ratioWithin, type Saying, type Sides, sidesOf } from "./saying.ts";

const salted: ReadonlySet<TripIce["form"]> = new Set(["block", "cube", "crushed", "jug"]);

function allAs(trip: Trip, form: "jug" | "eutectic pack"): Trip {
  const own = new Set(iceFromHome(trip).map(({ id }) => id));
  return withIce(trip, (lot) =>
    own.has(lot.id) && salted.has(lot.form) ? { ...lot, form, start_C: -18, liquid_frac: 0 } : lot,
  );
}

const noIce: Unmade = { why: "no ice is brought from the start" };
const needsIce = (trip: Trip, made: () => Sides | Unmade): Sides | Unmade =>
  iceFromHome(trip).length === 0 ? noIce : made();

/** Sayings about ice itself. */
export const iceSayings: readonly Saying[] = [
  {
    key: "salt-water blocks",
    saying: "salt-water blocks last longer than plain ice",
    claims: "longer; read here as 5 % or more",
    source: "common-practice",
    sides: (trip) =>
      needsIce(trip, () =>
        sidesOf(
          allAs(trip, "eutectic pack"),
          allAs(trip, "jug"),
          "the same weight in closed bottles at 0 °F (−18 °C), as brine that melts at 13 °F (−10.7 °C) against plain water; brine takes up less heat per pound, colder",
        ),
      ),
    find: ratioWithin([1.05, noEnd_ratio]),
  },
  {
    key: "deep-frozen ice",
    saying: "ice from a deep freeze is worth about a tenth more",
    claims: "5 to 14 % longer",
    source: "common-practice",
    sides: (trip) =>
      needsIce(trip, () =>
        sidesOf(withIceAt(trip, -18), withIceAt(trip, 0), "all ice at 0 °F (−18 °C) against 32 °F (0 °C)"),
      ),
    find: ratioWithin([1.05, 1.14]),
  },
  {
    key: "aged ice",
    saying: "ice must be aged for days in a very cold freezer",
    claims: "much longer; read here as another tenth or more",
    source: "common-practice",
    sides: (trip) =>
      needsIce(trip, () =>
        sidesOf(
          withIceAt(trip, -30),
          withIceAt(trip, -18),
          "all ice at −22 °F (−30 °C), colder than a home freezer, against 0 °F (−18 °C); days at one temperature change nothing here",
        ),
      ),
    find: ratioWithin([1.1, noEnd_ratio]),
  },
  {
    key: "block three times cubes",
    saying: "block ice lasts three times as long as cubes",
    claims: "2.5 to 3.5 times as long",
    source: "common-practice",
    sides: (trip) =>
      looseAndBlocks(trip).length === 0
        ? { why: "there is no block ice and no cubes" }
        : sidesOf(
            withIceForm(trip, "block"),
            fits(trip, withIceForm(trip, "cube")),
            "the same weight of ice all as blocks against all as cubes",
          ),
    find: ratioWithin([2.5, 3.5]),
  },
];
