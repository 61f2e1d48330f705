import type { Cover } from "../cooler/types.ts";
import { withDrain } from "../forecast/drainSwitch.ts";
import type { Trip } from "../trip/types.ts";
import { withCooler } from "./change.ts";
import { coolerHabit, type Habit } from "./habit.ts";

/** Openings scaled, the lid never open for more than half of its hours; null where there is nothing to scale. */
function opened(trip: Trip, i: number, perDay_ratio: number, each_s: (now_s: number) => number): Trip {
  const { openings } = trip.coolers[i];
  if (openings === null) return trip;
  const lid_s = each_s(openings.each_s);
  const most = (0.5 * (openings.to_s - openings.from_s)) / lid_s;
  const perDay = Math.min(openings.perDay * perDay_ratio, Math.max(openings.perDay, most));
  return withCooler(trip, i, { openings: { ...openings, perDay, each_s: lid_s } });
}

const same = (now_s: number): number => now_s;
const neverOpened = "no cooler is opened by habit";
const short_s = 15;
const asWritten = "opened as written";

/** Half as often is only ever a better way, twice as often only ever a worse one: each is tried from the trip's own. */
const openings: Habit[] = [
  coolerHabit({
    key: "open half as often",
    says: "open the cooler half as often",
    goodWords: "half the openings",
    badWords: asWritten,
    inAll: "good",
    why: neverOpened,
    wayOf: (trip, i) => (trip.coolers[i].openings === null ? null : "bad"),
    set: (trip, i) => opened(trip, i, 0.5, same),
  }),
  coolerHabit({
    key: "open twice as often",
    says: "do not open the cooler twice as often as planned",
    goodWords: asWritten,
    badWords: "twice the openings",
    inAll: "bad",
    why: neverOpened,
    wayOf: (trip, i) => (trip.coolers[i].openings === null ? null : "good"),
    set: (trip, i) => opened(trip, i, 2, same),
  }),
  coolerHabit({
    key: "open briefly",
    says: "know what you want and shut the lid within 15 s",
    goodWords: "every opening 15 s",
    badWords: asWritten,
    inAll: "good",
    why: "every opening is as short as 15 s already",
    wayOf: (trip, i) => ((trip.coolers[i].openings?.each_s ?? 0) > short_s ? "bad" : null),
    set: (trip, i) => opened(trip, i, 1, (now_s) => Math.min(now_s, short_s)),
  }),
  coolerHabit({
    key: "open twice as long",
    says: "do not search in the open cooler",
    goodWords: asWritten,
    badWords: "every opening twice as long",
    inAll: "bad",
    why: neverOpened,
    wayOf: (trip, i) => (trip.coolers[i].openings === null ? null : "good"),
    set: (trip, i) => opened(trip, i, 1, (now_s) => 2 * now_s),
  }),
];

const topSheet = coolerHabit({
  key: "sheet on top",
  says: "lay a foam sheet on the load, under the lid",
  goodWords: "a foam sheet on the load",
  badWords: "nothing on the load",
  inAll: "both",
  why: "packs lie on every load already",
  wayOf: (trip, i) =>
    (({ "foam sheet": "good", none: "bad", "cold packs": null }) as const)[trip.coolers[i].top],
  set: (trip, i, good) => withCooler(trip, i, { top: good ? "foam sheet" : "none" }),
});

/** One cover for the whole trip: what the file says of covering this cooler later is dropped. */
function covered(trip: Trip, cooler: number, cover: Cover): Trip {
  const events = trip.events.filter(
    (event) => (event.do !== "cover" && event.do !== "wet cloth") || event.cooler !== cooler,
  );
  return withCooler({ ...trip, events }, cooler, { cover });
}

const coverHabit = (key: Cover, says: string, goodWords: string, inAll: Habit["inAll"]): Habit =>
  coolerHabit({
    key,
    says,
    goodWords,
    badWords: "nothing over it",
    inAll,
    why: "every cooler has another cover already",
    wayOf: (trip, i) =>
      trip.coolers[i].cover === key ? "good" : trip.coolers[i].cover === "none" ? "bad" : null,
    set: (trip, i, good) => covered(trip, i, good ? key : "none"),
  });

/** A cooler has one cover: in "every habit good" the first of these that finds it bare is taken. */
const covers: Habit[] = [
  coverHabit(
    "wet cloth",
    "lay a wet cloth over it and wet it at every meal",
    "a wet cloth, wetted at meals",
    "both",
  ),
  coverHabit("reflective", "lay a reflective cover over it", "a reflective cover", "both"),
  coverHabit("blanket", "lay a blanket over it", "a blanket over it", "both"),
  coverHabit(
    "wet cloth inside",
    "lay a wet cloth on the load, under the lid",
    "a wet cloth on the load",
    "bad",
  ),
];

/** The habit of draining one cooler. */
export function drainKey(trip: Trip, cooler: number): string {
  return trip.coolers.length === 1 ? "drain" : `drain ${trip.coolers[cooler].name}`;
}

/** Draining differs from cooler to cooler, so each is asked by itself. People disagree on it: it is in no "all". */
const drainHabit = (trip: Trip, cooler: number): Habit => {
  return coolerHabit({
    key: drainKey(trip, cooler),
    says: "keep the meltwater in",
    goodWords: "meltwater kept",
    badWords: "drain open",
    inAll: "no",
    why: "no ice in it, so no meltwater",
    wayOf: ({ coolers, ice }, i) => {
      if (i !== cooler || !ice.some((lot) => lot.cooler === i && lot.form !== "dry ice")) return null;
      return ({ keep: "good", open: "bad", daily: "between" } as const)[coolers[i].drain];
    },
    set: (made, i, good) => withDrain(made, i, good ? "keep" : "open"),
  });
};

/** Habits of how coolers are opened, covered and drained. */
export const useHabits = (trip: Trip): Habit[] => [
  ...openings,
  ...trip.coolers.map((_, i) => drainHabit(trip, i)),
  topSheet,
  ...covers,
];
