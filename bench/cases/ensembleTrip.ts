import type { TripSource } from "../../core/index.ts";

/**
 * Four coolers for a week in the heat, each with food for the days, ice at its foot and among the food; every number is
 * invented.
 */
export function weekOfFour(coolers = 4, days = 7): TripSource {
  const names = Array.from({ length: coolers }, (_, i) => `box${i + 1}`);
  const builds = ["thick", "standard", "thick", "thin"];
  const last = new Date(Date.UTC(2027, 5, 1 + days - 1)).toISOString().slice(0, 10);
  const boxes = names.map(
    (name, i) => `  - name: ${name}
    size: ${[65, 48, 54, 40][i % 4]} L
    build: ${builds[i % 4]}
    start: { at: ${[10, 22, 6, 28][i % 4]} C }
    openings: { per day: ${[8, 20, 4, 12][i % 4]}, for: 20 s, from: "07:00", to: "21:00" }`,
  );
  const food = names.flatMap((name, i) => [
    `  - { name: stew ${i}, amount: 2 kg, like: stew, state: frozen, at: -16 C, shape: { bag: 25 mm }, eat: day ${Math.max(1, days - 1)} dinner, in: ${name}, watertight: true }`,
    `  - { name: chicken ${i}, amount: 1.5 kg, like: chicken breast, raw: true, state: chilled, at: 3 C, eat: day ${Math.min(2, Math.max(1, days - 1))} dinner, in: ${name}, watertight: true }`,
    `  - { name: milk ${i}, amount: 2 L, like: milk, state: chilled, at: 4 C, eat: day ${Math.min(3, days)} breakfast, in: ${name}, watertight: true }`,
    `  - { name: cheese ${i}, amount: 1 kg, like: cheddar, state: chilled, at: 4 C, eat: day ${days} lunch, in: ${name}, watertight: true }`,
    `  - { name: cans ${i}, count: 12, each: 355 mL, like: soft drink, state: chilled, at: 6 C, eat: throughout, in: ${name}, watertight: true }`,
  ]);
  const ice = names.flatMap((name) => [
    `  - { form: block, amount: 6 kg, at: -10 C, in: ${name}, layer: base }`,
    `  - { form: cube, amount: 6 kg, at: -2 C, in: ${name}, layer: fill }`,
  ]);
  const text = `coldstow: 1
title: Four boxes
depart: 2027-06-01T07:00
return: ${last}T18:00
place: { latitude: 38, longitude: -110, elevation: 1200 m, timezone: America/Denver }
party: { adults: 8, children: 0, vulnerable: false }
limit: consumer
confidence: 90 %
weather: { days: [ { high: 34 C, low: 17 C, humidity: 25 %, cloud: 10 %, wind: 2 m/s } ] }
legs: [ { until: day 1 12:00, where: truck bed }, { where: camp, shade: 70 % } ]
coolers:
${boxes.join("\n")}
food:
${food.join("\n")}
ice:
${ice.join("\n")}
`;
  return { text, file: "four-boxes.yaml", beside: [] };
}
