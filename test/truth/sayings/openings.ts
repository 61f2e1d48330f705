import { type Change, forecastWith } from "../scenario.ts";
import { both, day, fullSun, galley, ice_h, load, no, plain, returnAt, type Saying } from "./saying.ts";

const perKilogram_kJ = 333.55;

/** One opening on a day without others, at one in the afternoon. */
const oneOpening = (length: string): Change =>
  both(galley({ openings: { "per day": 0 } }), (draft) => {
    draft.return = "2027-06-19T08:00";
    draft.events.push({ at: "day 1 13:00", do: "open", cooler: "galley", for: length });
  });

/** Ice that openings melt: their air and their exposure together. */
function opened_g(change: Change): { air_g: number; all_g: number } {
  const { openingAir, openingExposure } = forecastWith(change).cooler.heat_kJ;
  const grams = (heat_kJ: number) => (1000 * heat_kJ) / perKilogram_kJ;
  return { air_g: grams(openingAir), all_g: grams(openingAir + openingExposure) };
}

export function openingSayings(): Saying[] {
  const humid = day({ humidity: "70 %" });
  const long = both(oneOpening("120 s"), fullSun, load(0.5), humid);
  const shut: Change = both(oneOpening("1 s"), returnAt("2027-06-20T08:00"));
  const cans: Change = both(shut, (draft) => {
    const item = { name: "cans", count: 6, each: "355 mL", like: "soft drink", at: "30 C" };
    draft.events.push({ at: "day 1 13:01", do: "put in", item, to: "galley" });
  });
  const warm_kJ = forecastWith(cans).cooler.heat_kJ.warmItems - forecastWith(shut).cooler.heat_kJ.warmItems;
  return [
    {
      says: "the air of a full box is worth grams",
      asked: "20 s, full, shade, humid: its air",
      claim: [0, 10],
      ours: opened_g(both(oneOpening("20 s"), humid)).air_g,
      unit: "g of ice",
    },
    {
      says: "a long one over a half-empty box in the sun: tens of grams",
      asked: "120 s, half full, sun, humid",
      claim: [10, 100],
      ours: opened_g(long).all_g,
      unit: "g of ice",
    },
    {
      says: "warm items are worth more than the air",
      asked: "six cans at 30 °C / that long opening",
      claim: [1, no],
      ours: (1000 * warm_kJ) / perKilogram_kJ / opened_g(long).all_g,
      unit: "×",
    },
    {
      says: "one opening kills it (not: small)",
      asked: "8 openings a day of 20 s against none",
      claim: [-5, 0],
      ours: 100 * (ice_h(plain) / ice_h(galley({ openings: { "per day": 0 } })) - 1),
      unit: "% of ice life",
    },
  ];
}
