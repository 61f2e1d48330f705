import type { WayOut } from "../../forecast/planResult.ts";
import { volumeWords } from "../../quantity/show.ts";
import type { Trip, TripCooler } from "../../trip/types.ts";
import { dayIndex, simulatedLosses } from "./losses.ts";
import { lumpsOf, needsNoCold } from "./lumps.ts";
import { type AssignOptions, fitsIn, type Settled, settle, solved } from "./refine.ts";
import { type Task, taskFor } from "./task.ts";

/** Cooler sizes that a larger one is tried in, against what is there. */
const larger_ratio = [1.3, 1.7, 2.5];
/** As many as are told. */
const mostWays = 4;

interface Way {
  does: string;
  task: Task;
}

const whole = (trip: Trip): Task => taskFor(trip, lumpsOf(trip), simulatedLosses(trip));

function grown(cooler: TripCooler, ratio: number): TripCooler {
  const side = Math.cbrt(ratio);
  const { length_m, width_m, height_m } = cooler.body.inside;
  const { measured_W_per_K, emptyWeight_kg } = cooler.body;
  return {
    ...cooler,
    volume_m3: cooler.volume_m3 * ratio,
    body: {
      ...cooler.body,
      inside: { length_m: length_m * side, width_m: width_m * side, height_m: height_m * side },
      emptyWeight_kg: emptyWeight_kg * side * side,
      measured_W_per_K: measured_W_per_K === null ? null : measured_W_per_K * side * side,
    },
  };
}

/** The cooler that is fullest over. */
function tightest({ answer, filled_frac }: Settled): number {
  const over = answer.over_L.map((over_L, c) => over_L + Math.max(0, filled_frac[c]! - 1));
  return over.indexOf(Math.max(...over));
}

function largerWays({ task: { trip } }: Settled, c: number): Way[] {
  const { name, volume_m3 } = trip.coolers[c]!;
  return larger_ratio.map((ratio) => {
    const room_m3 = volume_m3 * ratio;
    const size = `${volumeWords(room_m3, "metric")} (${volumeWords(room_m3, "us")})`;
    const coolers = trip.coolers.map((cooler, i) => (i === c ? grown(cooler, ratio) : cooler));
    return { does: `take a cooler of ${size} for ${name}`, task: whole({ ...trip, coolers }) };
  });
}

function oneMore({ task: { trip } }: Settled, c: number): Way[] {
  const twin = { ...trip.coolers[c]!, name: `second ${trip.coolers[c]!.name}`, sealedUntil_s: null };
  return [
    {
      does: `take a second cooler like ${trip.coolers[c]!.name}`,
      task: whole({ ...trip, coolers: [...trip.coolers, twin] }),
    },
  ];
}

/** The bulkiest one or two things that the file leaves open, drinks before food. */
function leftOut({ task: { trip, lumps } }: Settled): Way[] {
  const open = lumps
    .filter(({ pinned, bulk_L }) => !pinned && bulk_L > 0)
    .flatMap((lump) =>
      lump.items.map((item) => ({ item, drink: lump.drink, mass_kg: trip.food[item]!.mass_kg })),
    )
    .filter(({ item }) => !needsNoCold(trip.food[item]!))
    .sort((a, b) => Number(b.drink) - Number(a.drink) || b.mass_kg - a.mass_kg || a.item - b.item);
  const less = (items: readonly number[]): Way => {
    const names = items.map((item) => trip.food[item]!.name).join(" and ");
    const food = trip.food.filter((_, i) => !items.includes(i));
    return { does: `leave ${names} out, or buy it on the way`, task: whole({ ...trip, food }) };
  };
  return [1, 2].filter((n) => open.length >= n).map((n) => less(open.slice(0, n).map(({ item }) => item)));
}

/** Ice that can be had on the way: only what the days before that need is aboard at departure. */
function iceOnTheWay({ task }: Settled): Way[] {
  const moments = task.trip.supply.flatMap(({ when_s, where, chance_frac }) =>
    (when_s ?? []).map((t_s) => ({ t_s, where, chance_frac })),
  );
  const [first] = moments.sort((a, b) => a.t_s - b.t_s);
  if (first === undefined || first.t_s <= 0) return [];
  const day = dayIndex(task.trip, first.t_s) + 1;
  const chance =
    first.chance_frac === null
      ? ""
      : `, with a chance of ${Math.round(100 * first.chance_frac)} % by your file`;
  return [
    {
      does: `start with ice for ${day} days and fetch more at ${first.where}${chance}`,
      task: { ...task, daysCount: day },
    },
  ];
}

/** Freezing what may be frozen, which then is ice itself. */
function freezeMore({ task: { trip } }: Settled): Way[] {
  const can = trip.food
    .map((item, index) => ({ item, index }))
    .filter(
      ({ item }) =>
        item.state === "chilled" && item.open.state && !item.freezesBadly && item.putIn_s === null,
    )
    .filter(({ item }) => item.like.kind !== "drink" && item.like.freezes_C !== null)
    .sort((a, b) => b.item.mass_kg - a.item.mass_kg || a.index - b.index);
  const [largest] = can;
  if (largest === undefined || trip.freezer === null) return [];
  const start_C = trip.freezer.at_C;
  const food = trip.food.map((item) =>
    item === largest.item ? { ...item, state: "frozen" as const, start_C } : item,
  );
  return [
    { does: `freeze ${largest.item.name}, which then stands in for ice`, task: whole({ ...trip, food }) },
  ];
}

/** Tries one kind of change, mildest first, and tells the first that fits, or the last. */
async function tried(ways: readonly Way[], options: AssignOptions): Promise<WayOut | null> {
  let out: WayOut | null = null;
  for (const { does, task } of ways) {
    const answer = await solved(task, options);
    const left_L = answer.over_L.reduce((a, b) => a + b, 0);
    // With ice fetched later, the days after that are not this trial's matter.
    const fits = left_L === 0 && (task.daysCount !== undefined || fitsIn(settle(task, answer)));
    out = {
      says: `${does}: ${fits ? "then it fits" : `still does not fit${left_L > 0 ? `, by ${left_L.toFixed(1)} L` : ""}`}`,
      holds: fits,
    };
    if (fits) break;
  }
  return out;
}

/** Changes for a trip that does not fit, each solved again; those that work come first. At least three where the trip has coolers. */
export async function roomWays(best: Settled, options: AssignOptions): Promise<WayOut[]> {
  if (best.task.bins.length === 0) return [];
  const c = tightest(best);
  const kinds = [leftOut(best), largerWays(best, c), oneMore(best, c), iceOnTheWay(best), freezeMore(best)];
  const out: WayOut[] = [];
  for (const ways of kinds) {
    const way = await tried(ways, options);
    if (way !== null) out.push(way);
  }
  return [...out.filter(({ holds }) => holds), ...out.filter(({ holds }) => !holds)].slice(0, mostWays);
}
