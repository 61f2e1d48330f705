import { spreadOver } from "../../../core/ensemble/spread.ts";
import type { RunTasks } from "../../../core/ensemble/types.ts";
import type { CoolerFile, DayFile, FoodFile, IceFile, LegFile, TripFile } from "../../../core/trip/file.ts";
import { readTripObject } from "../../../core/trip/readTrip.ts";
import type { Trip } from "../../../core/trip/types.ts";
import { runTask } from "../../../core/whatif/runTask.ts";

/** A trip file with what a test changes at hand. */
export interface Small extends TripFile {
  weather: { days: [DayFile] };
  legs: [LegFile, ...LegFile[]];
  coolers: [CoolerFile, ...CoolerFile[]];
  food: [FoodFile, ...FoodFile[]];
  ice: [IceFile, ...IceFile[]];
  events: NonNullable<TripFile["events"]>;
}

/** An invented day and a half in dry summer heat: one food cooler, one for drinks. */
function small(): Small {
  return {
    coldstow: 1,
    title: "A day and a half",
    depart: "2027-06-18T08:00",
    return: "2027-06-19T20:00",
    place: { latitude: 38.6, longitude: -109.6, elevation: "1250 m", timezone: "America/Denver" },
    confidence: "90 %",
    weather: { days: [{ high: "36 C", low: "18 C", humidity: "20 %", cloud: "0 %", wind: "2 m/s" }] },
    legs: [{ where: "camp", shade: "50 %", ground: "soil" }],
    coolers: [
      {
        name: "galley",
        size: "40 L",
        build: "standard",
        color: "white",
        start: { kept: "27 C" },
        holds: "food",
        openings: { "per day": 8, for: "25 s" },
        drain: "keep",
      },
      {
        name: "bar",
        size: "30 L",
        build: "thin",
        color: "dark",
        start: { at: "5 C" },
        holds: "drinks",
        openings: { "per day": 12, for: "15 s" },
        drain: "open",
      },
    ],
    food: [
      { name: "milk", amount: "2 kg", like: "milk", at: "4 C", in: "galley", eat: "day 2 19:00" },
      { name: "ham", amount: "1 kg", like: "ham", at: "4 C", in: "galley", eat: "day 2 19:00" },
      { name: "cola", count: 12, each: "355 mL", like: "soft drink", at: "25 C", in: "bar" },
    ],
    ice: [
      { form: "cube", amount: "6 kg", at: "-2 C", in: "galley", price: 3 },
      { form: "gel pack", amount: "1 kg", at: "-16 C", in: "galley", layer: "top", price: 0 },
      { form: "cube", amount: "5 kg", at: "-2 C", in: "bar", price: 3 },
    ],
    events: [],
  };
}

/** The small trip, changed, as the reader of files makes it. */
export function smallTrip(change: (draft: Small) => void = () => {}): Trip {
  const draft = small();
  change(draft);
  const reading = readTripObject(structuredClone(draft), { file: "small.yaml" });
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.trip;
}

/** The galley alone: no second cooler, no drinks. */
export const oneCooler = (change: (draft: Small) => void = () => {}): Trip =>
  smallTrip((draft) => {
    draft.coolers = [draft.coolers[0]];
    draft.food = [draft.food[0], draft.food[1]!];
    draft.ice = [draft.ice[0], draft.ice[1]!];
    change(draft);
  });

/** Runs tasks in this thread. */
export const inThread = (trips: readonly Trip[]): RunTasks =>
  spreadOver([{ run: async (task) => runTask(trips, task) }]);
