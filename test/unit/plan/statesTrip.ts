import { readTrip } from "../../../core/trip/readTrip.ts";
import type { Trip } from "../../../core/trip/types.ts";

export interface Told {
  food?: readonly string[];
  freezer?: string | null;
  depart?: string;
  return?: string;
  more?: string;
}

/** Five invented days with two coolers, everything about the food left to the planner. */
export function openTrip({ food = [], freezer = "60 L", ...told }: Told = {}): Trip {
  const text = `coldstow: 1
depart: ${told.depart ?? "2027-06-18T09:00"}
return: ${told.return ?? "2027-06-22T15:00"}
place: { latitude: 45, longitude: 7, elevation: 400 m, timezone: Europe/Rome }
weather: { days: [{ high: 28 C, low: 15 C, humidity: 50 % }] }
coolers:
  - { name: galley, size: 60 L, build: thick, start: { at: 6 C }, holds: food }
  - { name: bar, size: 30 L, build: thin, start: { kept: 28 C }, holds: drinks }
food:
${food.map((line) => `  - { ${line} }`).join("\n")}
${freezer === null ? "" : `freezer: { space: ${freezer}, at: -18 C }`}
${told.more ?? ""}
`;
  const reading = readTrip(food.length === 0 ? text.replace("food:\n", "food: []") : text, {
    file: "trip.yaml",
  });
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.trip;
}
