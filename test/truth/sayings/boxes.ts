import { type Change, forecastWith } from "../scenario.ts";
import { both, cubes, galley, hotGarage, ice_h, load, no, plain, type Saying } from "./saying.ts";

/** Ice by volume to all the rest that this many days need, found by halving; and the load that goes with it. */
function neededRatio(build: "standard" | "thick", days: number): number {
  let low = 1;
  let high = 120;
  const outcome = (kg: number) => forecastWith(both(galley({ build, size: "120 qt" }), cubes(`${kg} kg`)));
  for (let n = 0; n < 8; n++) {
    const mid = 0.5 * (low + high);
    if (outcome(mid).food_h < 24 * days) low = mid;
    else high = mid;
  }
  return outcome(high).cooler.iceToLoad_ratio!;
}

/** Most food, kg, that a 50-qt chest filled to the rim with cubes keeps under 40 °F for so many days. */
function mostFood_kg(build: "standard" | "thick", days: number): number {
  let most = 0;
  for (let factor = 0.25; factor <= 2.5; factor += 0.25) {
    // Ice goes in until the chest is full: three guesses straighten the line of fill against ice.
    let kg = 30;
    let outcome = forecastWith(plain);
    for (let n = 0; n < 3; n++) {
      outcome = forecastWith(both(galley({ build }), load(factor), cubes(`${kg} kg`)));
      kg *= 1 / outcome.cooler.filled_frac;
    }
    if (outcome.food_h >= 24 * days) most = 8 * factor;
  }
  return most;
}

export function sizeSayings(): Saying[] {
  const rule = "two parts ice to one of food; others say one to one";
  const follows = "what is needed follows from days, wall and weather";
  const needs = (
    [
      { build: "standard", days: 2 },
      { build: "standard", days: 4, contradicts: follows },
      { build: "thick", days: 2, contradicts: follows },
      { build: "thick", days: 4 },
    ] as const
  ).map((need) => ({ ...need, ratio: neededRatio(need.build, need.days) }));
  const ratios = needs.map(({ ratio }) => ratio);
  return [
    ...needs.map(({ build, days, ratio, ...disagrees }) => ({
      says: rule,
      asked: `what ${days} days need, ${build} chest, 8 kg of food`,
      claim: [1, 2] as const,
      ours: ratio,
      unit: ": 1",
      ...disagrees,
    })),
    {
      says: "… an output, never an input",
      asked: "largest / smallest of these needs",
      claim: [2, no],
      ours: Math.max(...ratios) / Math.min(...ratios),
      unit: "×",
    },
    {
      says: "a 48–54 qt chest with proper ice holds little food",
      asked: "most food for 3 days, standard 50 qt (47 L)",
      claim: [0, 16],
      ours: mostFood_kg("standard", 3),
      unit: "kg",
    },
  ];
}

export function bodySayings(): Saying[] {
  const night = galley({ start: { prechill: "12 h", with: "4 kg", kept: "32 C" } });
  const gain = (build: "standard" | "thick") =>
    ice_h(both(galley({ build }), night)) - ice_h(both(galley({ build }), hotGarage));
  const twice: Change = both(galley({ size: "100 qt" }), load(2));
  const base = forecastWith(plain);
  const half = forecastWith(load(0.5));
  return [
    {
      says: "pre-chilling gains hours, not days",
      asked: "standard chest, night with ice against a 32 °C garage",
      claim: [1, 24],
      ours: gain("standard"),
      unit: "h of ice",
    },
    { says: "…", asked: "the same, thick chest", claim: [1, 24], ours: gain("thick"), unit: "h of ice" },
    {
      says: "a larger box of the same wall holds longer per kilogram",
      asked: "100 qt with twice of everything / 50 qt",
      claim: [1.05, no],
      ours: ice_h(twice) / base.ice_h,
      unit: "× hours",
    },
    {
      says: "a full box lasts longer than a half-empty one",
      asked: "50 qt full / filled by half",
      claim: [1.05, no],
      ours: base.ice_h / half.ice_h,
      unit: "× hours",
    },
    {
      says: "…",
      asked: "the same, hours for each kilogram of ice",
      claim: [1.001, no],
      ours: (0.5 * base.ice_h) / half.ice_h,
      unit: "× hours/kg",
      contradicts:
        "the upper half of its walls stands beside warm air, which lets less heat through to each kilogram",
    },
    {
      says: "…",
      asked: "the same load in 50 qt / in 100 qt",
      claim: [1.05, no],
      ours: base.ice_h / ice_h(galley({ size: "100 qt" })),
      unit: "× hours",
    },
  ];
}
