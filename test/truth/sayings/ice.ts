import { type Change, forecastWith } from "../scenario.ts";
import { both, cubes, galley, ice, ice_h, no, noFood, plain, type Saying } from "./saying.ts";

export function iceSayings(): Saying[] {
  const dry = (at: string) => cubes("14 kg", { at, liquid: "0 %" });
  const base = forecastWith(plain);
  const blocks = ice({ form: "block", amount: "14 kg", at: "-2 C", in: "galley" });
  const block = forecastWith(blocks);
  const firstDay = (change: Change) => {
    const alone = both(change, noFood);
    const { ice_kg } = forecastWith(alone).cooler.series;
    return ice_kg.p50[0]! - ice_kg.p50[24]!;
  };
  return [
    {
      says: "ice held in a deep freeze is worth about 11 % more",
      asked: "cubes at −18 against 0 °C, life of the ice",
      claim: [5, 14],
      ours: 100 * (ice_h(dry("-18 C")) / ice_h(dry("0 C")) - 1),
      unit: "%",
    },
    {
      says: "'ageing' adds nothing beyond that",
      asked: "the coldest home freezer, −24 against −18 °C",
      claim: [0, 5],
      ours: 100 * (ice_h(dry("-24 C")) / ice_h(dry("-18 C")) - 1),
      unit: "%",
    },
    {
      says: "block outlasts cubes",
      asked: "14 kg of block / of cubes, life of the ice",
      claim: [1.05, no],
      ours: block.ice_h / base.ice_h,
      unit: "×",
    },
    {
      says: "… but cools less",
      asked: "the same, hours until food is over 40 °F",
      claim: [0, 0.95],
      ours: block.food_h / base.food_h,
      unit: "×",
    },
    {
      says: "block lasts three times as long, some say",
      asked: "the same, life of the ice",
      claim: [2.5, 3.5],
      ours: block.ice_h / base.ice_h,
      unit: "×",
      contradicts:
        "both take up the heat that comes through the same wall; a block only takes it up a little later",
    },
    {
      says: "no difference in the first day (a paired test)",
      asked: "melted on day 1 without food, block / cubes",
      claim: [0.85, 1.15],
      ours: firstDay(blocks) / firstDay(plain),
      unit: "×",
    },
  ];
}

export function drainSayings(): Saying[] {
  const base = forecastWith(plain);
  const open = forecastWith(galley({ drain: "open" }));
  return [
    {
      says: "kept or drained: the ice life differs by less than 15 %",
      asked: "drained against kept",
      claim: [-15, 15],
      ours: 100 * (open.ice_h / base.ice_h - 1),
      unit: "%",
    },
    {
      says: "kept water keeps food cold longer (sources disagree)",
      asked: "kept − drained, until food is over 40 °F",
      claim: [0, no],
      ours: base.food_h - open.food_h,
      unit: "h",
    },
    {
      says: "…",
      asked: "cold hours after the last ice, kept − drained",
      claim: [0, no],
      ours: base.food_h - base.ice_h - (open.food_h - open.ice_h),
      unit: "h",
    },
  ];
}
