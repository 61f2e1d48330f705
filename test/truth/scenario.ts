import { stringify } from "yaml";
import type { Closures } from "../../core/cooler/closures.ts";
import { medianClosures } from "../../core/cooler/closures.ts";
import { coolerResult } from "../../core/forecast/coolerResult.ts";
import { forecast } from "../../core/forecast/forecast.ts";
import type { CoolerResult } from "../../core/forecast/result.ts";
import { runTrip } from "../../core/forecast/run.ts";
import type { CoolerFile, DayFile, FoodFile, IceFile, LegFile, TripFile } from "../../core/trip/file.ts";
import { readTrip } from "../../core/trip/readTrip.ts";
import type { Trip } from "../../core/trip/types.ts";

/** The reference trip with its single cooler, day, leg and ice at hand, so that a test changes one thing. */
export interface Draft extends TripFile {
  return: string;
  weather: { days: [DayFile] };
  legs: [LegFile];
  coolers: [CoolerFile, ...CoolerFile[]];
  food: FoodFile[];
  ice: [IceFile, ...IceFile[]];
  events: NonNullable<TripFile["events"]>;
}

export type Change = (draft: Draft) => void;

/**
 * An invented reference: a 50-qt chest with foamed walls in a shady summer camp, packed cold with 8 kg of chilled food and 14 kg of
 * shop cubes, opened eight times a day; nothing is eaten, and it stands for eight days, so that every end is seen.
 */
function reference(): Draft {
  const chilled = (name: string, amount: string): FoodFile => ({
    name,
    amount,
    like: name,
    at: "3 C",
    in: "galley",
  });
  return {
    coldstow: 1,
    title: "Reference camp",
    depart: "2027-06-18T08:00",
    return: "2027-06-26T08:00",
    place: { latitude: 38.6, longitude: -109.6, elevation: "1250 m", timezone: "America/Denver" },
    weather: { days: [{ high: "32 C", low: "16 C", humidity: "35 %", cloud: "10 %", wind: "2 m/s" }] },
    legs: [{ where: "camp", shade: "80 %", ground: "soil" }],
    coolers: [
      {
        name: "galley",
        size: "50 qt",
        build: "standard",
        color: "white",
        start: { at: "6 C" },
        openings: { "per day": 8, for: "20 s" },
        drain: "keep",
      },
    ],
    food: [
      chilled("milk", "2 kg"),
      chilled("chicken thigh", "3 kg"),
      chilled("ham", "1.5 kg"),
      chilled("salad", "1.5 kg"),
    ],
    ice: [{ form: "cube", amount: "14 kg", at: "-2 C", in: "galley" }],
    events: [],
  };
}

/** The reference trip, changed, as text through the reader that a person's own file goes through. */
function tripWith(change: Change): Trip {
  const draft = reference();
  change(draft);
  const reading = readTrip(stringify(draft, { aliasDuplicateObjects: false }), { file: "reference.yaml" });
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.trip;
}

/** What a forecast says of a cooler: hours of ice, hours until the first perishable is over its limit; and the whole. */
export interface Outcome {
  ice_h: number;
  food_h: number;
  cooler: CoolerResult;
}

function outcomeOf(cooler: CoolerResult): Outcome {
  const never = Number.POSITIVE_INFINITY;
  return { ice_h: cooler.iceOut_h.p50 ?? never, food_h: cooler.overLimit_h.p50 ?? never, cooler };
}

export function forecastWith(change: Change, name = "galley"): Outcome {
  const { result } = forecast(tripWith(change), { effects: false });
  return outcomeOf(result.coolers.find((cooler) => cooler.name === name)!);
}

/** As `forecastWith`, with other coefficients than the middle ones. */
export function runWith(change: Change, closures: Partial<Closures>): Outcome {
  const trip = tripWith(change);
  return outcomeOf(coolerResult(trip, runTrip(trip, { closures: { ...medianClosures, ...closures } }), 0));
}

/** Multiplies every amount of food and ice. */
export function scaleLoad(draft: Draft, factor: number): void {
  for (const lot of [...draft.food, ...draft.ice])
    if (lot.amount !== undefined) lot.amount = `${Number.parseFloat(lot.amount) * factor} kg`;
}
