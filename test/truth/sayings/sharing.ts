import type { Change } from "../scenario.ts";
import { both, cubes, food_h, galley, load, no, type Saying } from "./saying.ts";

/** The load with a case of drinks beside it, in a box of its own or among the food; the same ice in all. */
const drinksApart: Change = (draft) => {
  const cans = { name: "cans", count: 24, each: "355 mL", like: "soft drink", at: "25 C", eat: "throughout" };
  draft.return = "2027-06-25T08:00";
  draft.food.push({ ...cans, in: "bar" });
  const openings = { "per day": 30, for: "30 s" };
  draft.coolers.push({
    name: "bar",
    size: "30 qt",
    build: "thin",
    color: "white",
    start: { at: "22 C" },
    openings,
  });
  draft.ice.push({ form: "cube", amount: "9 kg", at: "-2 C", in: "bar" });
};
const drinksAmong: Change = both(drinksApart, (draft) => {
  draft.food.at(-1)!.in = "galley";
  draft.ice[0]!.amount = "23 kg";
  draft.ice.pop();
  draft.coolers.pop();
  Object.assign(draft.coolers[0], { size: "80 qt", openings: { "per day": 38, for: "30 s" } });
});
/** Among the food in the same 50-qt chest: the food chest is opened for every drink. */
const drinksInFood: Change = both(drinksAmong, galley({ size: "50 qt" }), cubes("14 kg"));

/** Two chests half full, one poured into the other at a moment, or never. */
const halves = (merge: string | null): Change =>
  both(load(0.5), (draft) => {
    draft.coolers.push({ ...draft.coolers[0], name: "second" });
    draft.food.push(
      ...draft.food.map((item) => ({ ...item, name: `${item.name} 2`, like: item.like!, in: "second" })),
    );
    draft.ice.push({ ...draft.ice[0], in: "second" });
    if (merge !== null) draft.events.push({ at: merge, do: "merge", from: "second", into: "galley" });
  });

export function sharingSayings(): Saying[] {
  return [
    {
      says: "drinks in their own cooler",
      asked: "food hours, apart / in one 80-qt chest, same ice in all",
      claim: [1, no],
      ours: food_h(drinksApart) / food_h(drinksAmong),
      unit: "×",
      contradicts:
        "one larger chest has less wall for its ice; what parting saves is openings, and these are small",
    },
    {
      says: "…",
      asked: "food hours, apart / among the food in its 50-qt chest",
      claim: [1, no],
      ours: food_h(drinksApart) / food_h(drinksInFood),
      unit: "×",
    },
    {
      says: "merge when both are half empty",
      asked: "food hours, merged on day 1 − left apart",
      claim: [1, no],
      ours: food_h(halves("day 1 12:00")) - food_h(halves(null)),
      unit: "h",
    },
  ];
}
