import type { CoolerResult, HeatBudget } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { asText } from "./forecastText.ts";
import { cut, padded, paddedLeft } from "./lines.ts";
import { printable } from "./words.ts";

const ACCOUNTS: readonly (readonly [keyof HeatBudget, string])[] = [
  ["lid", "through the lid"],
  ["sides", "through the walls"],
  ["base", "through the base"],
  ["seal", "by the lid edge and leaks"],
  ["openingAir", "air let in by openings"],
  ["openingExposure", "contents bared by openings"],
  ["warmItems", "given up by food and drink"],
  ["body", "given up by the cooler's body"],
];

/**
 * The books of each cooler, as `--check` prints them: heat by account and its sum, beside the change of the cold store
 * and what left with water and gas; what the energy books miss, as a share of all flows; and the water.
 */
export function booksText(forecast: Forecast): string {
  return asText(forecast.result.coolers.map(bookLines));
}

function bookLines(cooler: CoolerResult): string[] {
  const { heat_kJ, heatUntil_h, balance } = cooler;
  const total_kJ = ACCOUNTS.reduce((sum, [key]) => sum + heat_kJ[key], 0);
  return [
    `${cut(printable(cooler.name), 30)}: energy to hour ${heatUntil_h.toFixed(1)}, kJ`,
    ...ACCOUNTS.map(([key, words]) => row(words, heat_kJ[key])),
    row("sum of the accounts", total_kJ),
    row("change of ice and water, and what left", cooler.coldStore_kJ),
    row("difference", total_kJ - cooler.coldStore_kJ, 6),
    row("of which sun", heat_kJ.sun),
    row("of which carried off by dry-ice gas", heat_kJ.dryIceGas),
    `  missing from the energy books: ${tiny(balance.energy_rel)} of all flows`,
    "water, kg",
    row("melted from ice", cooler.iceMelted_kg, 3),
    row("condensed from air", cooler.condensed_g / 1000, 3),
    row("drained (L)", cooler.drained_L, 3),
    `  missing from the water books: ${tiny(balance.water_g)} g`,
  ];
}

function row(words: string, value: number, digits = 1): string {
  return `  ${padded(words, 40)}${paddedLeft(value.toFixed(digits).replace("-", "−"), 14)}`;
}

function tiny(value: number): string {
  return value.toExponential(1).replace(/^-/, "−");
}
