import type { ColdHours, HeatBudget } from "../forecast/result.ts";
import { iceLatent_J_per_kg } from "../matter/ice.ts";
import { asText } from "./forecastText.ts";
import { cut, padded, paddedLeft } from "./lines.ts";
import { iceAmount, iceUnit, type TextOptions } from "./voice.ts";
import { printable } from "./words.ts";

const WAYS: readonly (readonly [string, readonly (keyof HeatBudget)[]])[] = [
  ["walls, base and lid", ["sides", "base", "lid"]],
  ["lid edge and leaks", ["seal"]],
  ["openings", ["openingAir", "openingExposure"]],
  ["food and drink", ["warmItems"]],
  ["the cooler itself", ["body"]],
];

const NAME_COLUMNS = 24;
const NUMBER_COLUMNS = 8;

/** Where the cold of each cooler went between two hours, as `forecast --hours` adds it: each way as ice at 0 °C, middle case. */
export function coldHoursText({ from_h, to_h, coolers }: ColdHours, { units, width }: TextOptions): string {
  const unit = iceUnit(units);
  const amount = (kJ: number): string =>
    iceAmount((kJ * 1000) / iceLatent_J_per_kg, units)
      .toFixed(2)
      .replace("-", "−");
  const row = (name: string, kJ: number): string =>
    `  ${padded(name, NAME_COLUMNS)}${paddedLeft(amount(kJ), NUMBER_COLUMNS)} ${unit}${paddedLeft(kJ.toFixed(0).replace("-", "−"), NUMBER_COLUMNS)} kJ`;
  return asText(
    coolers.map(({ name, heat_kJ }) => {
      const sum = (keys: readonly (keyof HeatBudget)[]): number =>
        keys.reduce((total, key) => total + heat_kJ[key], 0);
      const head = `${printable(name)}: where the cold went, hour ${from_h} to ${to_h}, as ice and as heat, likely case`;
      return [
        cut(head, width ?? 80),
        ...WAYS.map(([way, keys]) => row(way, sum(keys))),
        row("adds up to", sum(WAYS.flatMap(([, keys]) => keys))),
        row("of it the sun", heat_kJ.sun),
        ...(heat_kJ.dryIceGas === 0 ? [] : [row("of it cold gas", heat_kJ.dryIceGas)]),
      ];
    }),
  );
}
