import { readTrip, type Trip } from "../../core/index.ts";

const kinds = [
  ["stew", "frozen"],
  ["ham", "chilled"],
  ["chicken breast", "chilled"],
  ["yogurt", "chilled"],
  ["tomato", "chilled"],
  ["soft drink", "ambient"],
  ["ground beef", "frozen"],
] as const;

/** A week in warm weather with a menu of so many different items, all of them still without a place. */
export function menuOf(items: number, coolers: number): Trip {
  const food = Array.from({ length: items }, (_, i) => {
    const [like, state] = kinds[i % kinds.length];
    const grams = Math.round((30_000 / items) * (0.5 + ((i * 7) % 11) / 11));
    return `  - { name: item ${i}, amount: ${grams} g, like: ${like}, state: ${state}, eat: day ${1 + ((i * 3) % 7)} dinner }`;
  });
  const boxes = Array.from({ length: coolers }, (_, c) => {
    const holds = c === coolers - 1 && coolers > 1 ? "drinks" : coolers === 1 ? "any" : "food";
    const size_L = coolers === 1 ? 200 : 50 + 15 * (c % 4);
    return `  - { name: c${c}, size: ${size_L} L, build: thick, openings: { per day: ${4 + c}, for: 20 s, from: "07:00", to: "21:00" }, holds: ${holds} }`;
  });
  const reading = readTrip(
    `coldstow: 1
title: Bench
depart: 2027-07-02T06:00
return: 2027-07-08T20:00
place: { latitude: 40, longitude: -105, elevation: 1500 m, timezone: America/Denver }
party: { adults: 12, children: 0, vulnerable: false }
weather: { days: [ { high: 30 C, low: 16 C, humidity: 40 %, cloud: 10 %, wind: 2 m/s } ] }
legs: [ { where: camp, shade: 80 % } ]
coolers:
${boxes.join("\n")}
food:
${food.join("\n")}
`,
    { file: "bench.yaml" },
  );
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.trip;
}
