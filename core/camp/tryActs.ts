import type { Cover } from "../cooler/types.ts";
import { staysOf } from "../forecast/load.ts";
import { neverWords, notYetWords } from "../plan/mergeRules.ts";
import { mergeEvents } from "../plan/mergeTrial.ts";
import { placeDefaults } from "../sky/places.ts";
import type { Trip, TripEvent, TripIce, TripSupply } from "../trip/types.ts";
import type { SaidEntry } from "./logFile.ts";

/** Something that can be done now, and the trip with it done. */
export interface TriedAct {
  key: string;
  /** As an order: "Merge bar into galley". */
  says: string;
  trip: Trip;
  /** What a camp log says once it was done, without id, moment and who; empty: it is not done now. */
  logs: readonly SaidEntry[];
  /** Acts of one group differ in how much is done; they stand in rising order, and the least that is enough is wanted. */
  group?: string;
}

const withMore = (trip: Trip, more: readonly TripEvent[]): Trip => ({
  ...trip,
  events: [...trip.events, ...more].sort((a, b) => a.t_s - b.t_s),
});

/** Everything in full shade from now on, wherever it stands in the open. */
function shadeActs(trip: Trip, now_s: number): TriedAct[] {
  return trip.coolers.flatMap(({ name }, cooler): TriedAct[] => {
    const events = staysOf(trip, cooler).flatMap((stay): TripEvent[] => {
      const { isOpen, shade_frac } = placeDefaults[stay.place];
      if (!isOpen || stay.to_s <= now_s || (stay.shade_frac ?? shade_frac) >= 0.95) return [];
      const { from_s: _from, to_s: _to, ...spot } = stay;
      const at = { t_s: Math.max(now_s, stay.from_s), until_s: stay.to_s };
      return [
        {
          do: "move",
          cooler,
          path: "camp",
          ...spot,
          airChanges_per_h: spot.airChanges_per_h ?? null,
          ...at,
          shade_frac: 1,
        },
      ];
    });
    if (events.length === 0) return [];
    const here = staysOf(trip, cooler).find(({ from_s, to_s }) => from_s <= now_s && now_s < to_s);
    const isHere = here !== undefined && placeDefaults[here.place].isOpen;
    return [
      {
        key: `shade ${name}`,
        says: `Keep ${name} in full shade from now on`,
        trip: withMore(trip, events),
        logs: isHere ? [{ cooler: name, moved: here.place, shade: "100 %" }] : [],
      },
    ];
  });
}

const coverWords: Readonly<Partial<Record<Cover, string>>> = {
  "wet cloth": "Hang a wet cloth over",
  reflective: "Lay a reflective sheet over",
};

function coverActs(trip: Trip, now_s: number): TriedAct[] {
  return trip.coolers.flatMap(({ name, cover }, cooler) => {
    const last = trip.events.findLast(
      (event) => event.do === "cover" && event.cooler === cooler && event.t_s <= now_s,
    );
    const has = last?.do === "cover" ? last.cover : cover;
    if (has !== "none") return [];
    return (["wet cloth", "reflective"] as const).map(
      (put): TriedAct => ({
        key: `${put} ${name}`,
        says: `${coverWords[put]} ${name}`,
        trip: withMore(trip, [{ do: "cover", t_s: now_s, cooler, cover: put, path: "camp" }]),
        logs: [{ cooler: name, covered: put }],
      }),
    );
  });
}

const drainActs = (trip: Trip, now_s: number): TriedAct[] =>
  trip.coolers.flatMap(({ name, drain }, cooler) =>
    drain === "open"
      ? []
      : [
          {
            key: `drain ${name}`,
            says: `Let the water out of ${name}`,
            trip: withMore(trip, [{ do: "drain", t_s: now_s, cooler, path: "camp" }]),
            logs: [{ cooler: name, drained: true }],
          },
        ],
  );

function mergeActs(trip: Trip, now_s: number): TriedAct[] {
  const all = trip.coolers.map((_, i) => i);
  return all.flatMap((from) =>
    all.flatMap((into): TriedAct[] => {
      const pair = { from, into };
      if (from === into || neverWords(trip, pair) !== null || notYetWords(trip, pair, now_s) !== null)
        return [];
      const [one, other] = [trip.coolers[from]!.name, trip.coolers[into]!.name];
      return [
        {
          key: `merge ${one} into ${other}`,
          says: `Empty ${one} into ${other}, raw food lowest`,
          trip: withMore(trip, mergeEvents(trip, pair, now_s)),
          logs: [{ cooler: one, "merged into": other }],
        },
      ];
    }),
  );
}

function fetched(trip: Trip, supply: TripSupply, cooler: number, t_s: number, pieces: number): Trip {
  const ice: TripIce = {
    id: "camp-ice",
    path: "camp",
    form: supply.form,
    mass_kg: pieces * supply.each_kg,
    pieces,
    each: supply.each,
    start_C: supply.at_C,
    liquid_frac: supply.liquid_frac,
    cooler,
    layer: "top",
    price: supply.price,
    putIn_s: t_s,
    boughtBefore_s: 0,
  };
  return { ...trip, ice: [...trip.ice, ice] };
}

/** Pieces that one person carries back from a shop in one go, in our judgement. */
const carried = 4;

/** Ice from the next visit to each place that still sells some, into the cooler whose ice ends first: one piece, two, … */
function fetchActs(trip: Trip, now_s: number, neediestIndex: number): TriedAct[] {
  return trip.supply.flatMap((supply): TriedAct[] => {
    const next_s = supply.when_s?.find((t_s) => t_s >= now_s && t_s < trip.duration_s);
    if (next_s === undefined || supply.max === 0) return [];
    const { name } = trip.coolers[neediestIndex]!;
    return Array.from({ length: Math.min(carried, supply.max ?? carried) }, (_, i) => ({
      key: `fetch ${supply.path} ${i + 1}`,
      says: `Fetch ${i + 1} × ${supply.each} of ${supply.form} from ${supply.where} into ${name} at the next visit`,
      trip: fetched(trip, supply, neediestIndex, next_s, i + 1),
      // It is logged as ice added, once it is back.
      logs: [],
      group: `fetch ${supply.path}`,
    }));
  });
}

/**
 * What a crew could do now, each with the trip as it would then go: merge, let water out, shade, cover, fetch ice. None of
 * them goes against the rules of what may lie together, opens a sealed cooler or fetches what nobody sells; whether it
 * helps is for a run to tell.
 *
 * @param neediestIndex the cooler whose ice ends first
 */
export function possibleActs(trip: Trip, now_s: number, neediestIndex: number): TriedAct[] {
  if (now_s >= trip.duration_s) return [];
  return [
    ...mergeActs(trip, now_s),
    ...shadeActs(trip, now_s),
    ...coverActs(trip, now_s),
    ...drainActs(trip, now_s),
    ...fetchActs(trip, now_s, neediestIndex),
  ];
}
