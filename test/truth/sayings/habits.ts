import type { Change } from "../scenario.ts";
import { both, day, fullSun, galley, hotGarage, ice_h, leg, no, plain, type Saying } from "./saying.ts";

export function habitSayings(): Saying[] {
  const warmFood: Change = (draft) => {
    for (const item of draft.food) Object.assign(item, { at: "15 C", state: "ambient" });
  };
  const allBad = both(
    hotGarage,
    fullSun,
    warmFood,
    galley({ color: "dark", openings: { "per day": 25, for: "60 s" } }),
  );
  const allGood = both(
    galley({ start: { at: "3 C" }, cover: "wet cloth", openings: { "per day": 3, for: "10 s" } }),
    (draft) => {
      draft.legs = [{ where: "camp", shade: "100 %", ground: "soil" }];
      draft.ice[0].at = "-18 C";
      Object.assign(draft.food[1]!, { at: "-16 C", state: "frozen" });
    },
  );
  const one = galley({ color: "dark" });
  return [
    {
      says: "all the bad habits together about halve the time, or worse",
      asked: "all bad / reference, life of the ice",
      claim: [0.2, 0.6],
      ours: ice_h(allBad) / ice_h(plain),
      unit: "×",
    },
    {
      says: "…",
      asked: "all good / all bad",
      claim: [2, no],
      ours: ice_h(allGood) / ice_h(allBad),
      unit: "×",
    },
    {
      says: "a light lid",
      asked: "white − dark, full sun",
      claim: [1, no],
      ours: ice_h(fullSun) - ice_h(both(fullSun, one)),
      unit: "h of ice",
    },
    {
      says: "shade",
      asked: "80 % shade − full sun, white",
      claim: [1, no],
      ours: ice_h(plain) - ice_h(fullSun),
      unit: "h of ice",
    },
    {
      says: "cabin instead of trunk",
      asked: "cooled cabin − trunk",
      claim: [1, no],
      ours: ice_h(leg({ where: "cabin" })) - ice_h(leg({ where: "trunk" })),
      unit: "h of ice",
    },
  ];
}

/** Wetted every hour of daylight instead of at the three meals. */
const wettedHourly: Change = (draft) => {
  for (let d = 1; d <= 6; d++)
    for (let hour = 8; hour <= 19; hour++)
      draft.events.push({
        at: `day ${d} ${String(hour).padStart(2, "0")}:30`,
        do: "wet cloth",
        cooler: "galley",
      });
};

export function clothSayings(): Saying[] {
  const dry = day({ humidity: "15 %" });
  const humid = day({ humidity: "85 %" });
  const cloth = galley({ cover: "wet cloth" });
  const gain_h = (around: Change, wetted: Change = plain) =>
    ice_h(both(around, cloth, wetted)) - ice_h(around);
  return [
    {
      says: "a wet cloth is strong in the desert",
      asked: "15 % humid, shade, wetted at meals",
      claim: [4, no],
      ours: gain_h(dry),
      unit: "h of ice",
    },
    {
      says: "…",
      asked: "15 % humid, full sun, wetted at meals",
      claim: [4, no],
      ours: gain_h(both(dry, fullSun)),
      unit: "h of ice",
      contradicts: "in full sun it is dry within an hour or two, and dry cloth is darker than a white lid",
    },
    {
      says: "…",
      asked: "15 % humid, full sun, wetted hourly by day",
      claim: [4, no],
      ours: gain_h(both(dry, fullSun), wettedHourly),
      unit: "h of ice",
    },
    {
      says: "… and weak in humid heat",
      asked: "85 % humid, shade: gain / gain in dry shade",
      claim: [0, 0.5],
      ours: gain_h(humid) / gain_h(dry),
      unit: "×",
    },
  ];
}
