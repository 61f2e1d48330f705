import { withDrain } from "../forecast/drainSwitch.ts";
import type { Trip } from "../trip/types.ts";
import { mainCoolerIndex, type Unmade } from "./change.ts";
import { chilledBody, warmBody } from "./coolerHabits.ts";
import { iceGain_h } from "./gains.ts";
import { ratioWithin, type Saying, sidesOf } from "./saying.ts";
import { hoursFinding } from "./sayingWords.ts";

/** The first noon on the way, by the clock of departure; null where the trip has none. */
function noon_s(trip: Trip): number | null {
  const day_s = 86_400;
  const t_s = (day_s / 2 - trip.departClock_s + day_s) % day_s || day_s;
  return t_s < trip.duration_s ? t_s : null;
}

function openedOnce(trip: Trip): Trip | Unmade {
  const t_s = noon_s(trip);
  if (t_s === null) return { why: "the trip has no noon" };
  const open = { do: "open", t_s, cooler: mainCoolerIndex(trip), for_s: 90, path: "events" } as const;
  return { ...trip, events: [...trip.events, open].sort((a, b) => a.t_s - b.t_s) };
}

const drained = (trip: Trip, drain: "open" | "keep"): Trip => withDrain(trip, mainCoolerIndex(trip), drain);

/** Sayings about what is done with a cooler. */
export const useSayings: readonly Saying[] = [
  {
    key: "one opening",
    saying: "one opening kills it",
    claims: "much of the ice; read here as a tenth of its life or more",
    source: "common-practice",
    sides: (trip) =>
      sidesOf(openedOnce(trip), trip, "one more opening of 90 s at noon of the first day against none"),
    find: ratioWithin([0, 0.9]),
  },
  {
    key: "drain or keep",
    saying: "drain the water off and the ice lasts longer",
    claims: "2 to 15 % longer; comparisons disagree even on the sign",
    source: "common-practice",
    sides: (trip) =>
      sidesOf(drained(trip, "open"), drained(trip, "keep"), "drain open against meltwater kept"),
    find: ratioWithin([1.02, 1.15]),
  },
  {
    key: "pre-chill",
    saying: "chilling the cooler beforehand gains days",
    claims: "24 h or more",
    source: "common-practice",
    sides: (trip) =>
      sidesOf(
        chilledBody(trip, mainCoolerIndex(trip)),
        warmBody(trip, mainCoolerIndex(trip)),
        "chilled overnight with ice against packed warm from a garage or car",
      ),
    find: ({ trip }, one, other) =>
      hoursFinding(iceGain_h(other.draws, one.draws, mainCoolerIndex(trip)), [24, Number.POSITIVE_INFINITY]),
  },
];
